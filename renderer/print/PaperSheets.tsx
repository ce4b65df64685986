import type { PaperDocument } from '../../core/contract/paper.ts';
import type { Paper } from '../links.ts';
import { EarlierPaper } from './earlier/EarlierPaper.tsx';
import { EARLIER_SHEETS } from './earlier/Sheet.tsx';
import { LabelsPaper, labelSheets } from './LabelsPaper.tsx';
import { PlanPaper } from './PlanPaper.tsx';
import { PrepPaper } from './PrepPaper.tsx';
import { ThawListPaper, thawSheets } from './ThawListPaper.tsx';

/** The sheets of any document, as they are printed. Whoever shows them measures them: see `useFit`. */
export function PaperSheets({ document, paper }: { document: PaperDocument; paper: Paper }) {
  switch (document.kind) {
    case 'plan':
      if (document.version !== 3) return <EarlierPaper document={document} paper={paper} />;
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
  if (document.kind === 'plan') return document.version === 3 ? document.sheets.length : EARLIER_SHEETS;
  if (document.kind === 'thaw') return thawSheets(document.days).length;
  return document.kind === 'labels' ? labelSheets(document, paper).length : 1;
}
