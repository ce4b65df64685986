import type { PaperDocument } from '../../core/contract/paper.ts';
import type { Paper } from '../links.ts';
import { LabelsPaper, labelSheets } from './LabelsPaper.tsx';
import { PlanPaper } from './PlanPaper.tsx';
import { PrepPaper } from './PrepPaper.tsx';
import { SHEETS } from './Sheet.tsx';
import { ThawListPaper } from './ThawListPaper.tsx';

/** The sheets of any document, as they are printed. Whoever shows them measures them: see `useFit`. */
export function PaperSheets({ document, paper }: { document: PaperDocument; paper: Paper }) {
  switch (document.kind) {
    case 'plan':
      return <PlanPaper document={document} paper={paper} />;
    case 'prep':
      return <PrepPaper document={document} paper={paper} />;
    case 'thaw':
      return <ThawListPaper document={document} paper={paper} />;
    case 'labels':
      return <LabelsPaper document={document} paper={paper} />;
  }
}

/** How many sheets a document takes. */
export function sheetsOf(document: PaperDocument, paper: Paper): number {
  if (document.kind === 'plan') return SHEETS;
  return document.kind === 'labels' ? labelSheets(document, paper).length : 1;
}
