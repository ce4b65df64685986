import type { EarlierPlan } from '../../../core/homing/earlier-plan.ts';
import type { Paper } from '../../links.ts';
import { SheetOne } from './SheetOne.tsx';
import { SheetTwo } from './SheetTwo.tsx';
import '../../parts/parts.css';
import '../print.css';
import './earlier.css';

/**
 * The two sheets of a plan of version 1 or 2, laid out as they were when it was handed over: sizes by the length of a text,
 * and variable faces. It is kept only to print such a plan again; every new paper measures instead.
 */
export function EarlierPaper({ document, paper }: { document: EarlierPlan; paper: Paper }) {
  return (
    <article
      className="plan-paper earlier-paper on-paper"
      data-paper={paper}
      lang={document.language}
      aria-label={document.title}
    >
      <SheetOne document={document} paper={paper} />
      <SheetTwo document={document} />
    </article>
  );
}
