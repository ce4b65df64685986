import type { PlanDocument } from '../../core/homing/document.ts';
import type { Paper } from '../links.ts';
import { KitchenSheet } from './plan/KitchenSheet.tsx';
import { TableSheet } from './plan/TableSheet.tsx';
import { WeekSheet } from './plan/WeekSheet.tsx';
import '../parts/parts.css';
import './fonts.css';
import './print.css';
import './plan/plan.css';

/** The three sheets of one plan, as they are printed. Whoever shows them measures them: see `useFit`. */
export function PlanPaper({ document, paper }: { document: PlanDocument; paper: Paper }) {
  return (
    <article className="plan-paper go-home on-paper" data-paper={paper} lang={document.language} aria-label={document.title}>
      <WeekSheet document={document} paper={paper} />
      <TableSheet document={document} />
      <KitchenSheet document={document} />
    </article>
  );
}
