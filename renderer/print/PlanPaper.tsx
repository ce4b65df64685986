import type { PlanDocument } from '../../core/homing/document.ts';
import type { Paper } from '../links.ts';
import { SheetOne } from './SheetOne.tsx';
import { SheetTwo } from './SheetTwo.tsx';
import '../parts/parts.css';
import './print.css';

/** The two sheets of one plan, as they are printed. Whoever shows them measures them: see `useFit`. */
export function PlanPaper({ document, paper }: { document: PlanDocument; paper: Paper }) {
  return (
    <article className="plan-paper on-paper" data-paper={paper} lang={document.language} aria-label={document.title}>
      <SheetOne document={document} paper={paper} />
      <SheetTwo document={document} />
    </article>
  );
}
