import type { LabelSheet, LabelsDocument } from '../../core/freezer/paper-document.ts';
import { catalogueOf } from '../../core/words/catalogue.ts';
import type { Paper } from '../links.ts';
import './fonts.css';
import './print.css';
import './freezer-paper.css';

/** Labels on a sheet. The small ones are the common sheets of 24 (70 × 37 mm) and of 30 (2 5/8 × 1 in); the plain ones are cut out. */
const LABELS: Readonly<Record<LabelSheet, Readonly<Record<Paper, { readonly across: number; readonly down: number }>>>> = {
  small: { a4: { across: 3, down: 8 }, letter: { across: 3, down: 10 } },
  plain: { a4: { across: 2, down: 6 }, letter: { across: 2, down: 6 } },
};

/** How many labels one sheet holds. */
export function labelsOnSheet(sheet: LabelSheet, paper: Paper): number {
  const { across, down } = LABELS[sheet][paper];
  return across * down;
}

/** Names for the places of labels that were used before. */
const PLACES = Array.from({ length: 30 }, (_, i) => `used-${i}`);

type Label = LabelsDocument['labels'][number];

/** Labels by sheet; null is a place that was used before. */
export function labelSheets({ labels, sheet, used }: LabelsDocument, paper: Paper): (Label | null)[][] {
  const most = labelsOnSheet(sheet, paper);
  const places: (Label | null)[] = [...Array.from({ length: Math.min(used, most - 1) }, () => null), ...labels];
  return Array.from({ length: Math.ceil(places.length / most) }, (_, i) => places.slice(i * most, (i + 1) * most));
}

/** Labels to stick or to cut out: the use-by is the biggest thing on them. */
export function LabelsPaper({ document, paper }: { document: LabelsDocument; paper: Paper }) {
  const w = catalogueOf(document.language).freezerPaper;
  const sheets = labelSheets(document, paper);
  return (
    <article
      className={`plan-paper labels-paper labels-${document.sheet} on-paper`}
      data-paper={paper}
      lang={document.language}
      aria-label={document.title}
    >
      {sheets.map((labels, i) => (
        <section
          key={w.sheet(i + 1, sheets.length)}
          className="sheet"
          data-sheet={i + 1}
          data-name={document.title}
          aria-label={w.sheet(i + 1, sheets.length)}
        >
          <ul className="sheet-body">
            {labels.map((label, place) => (
              <LabelAt
                key={label === null ? (PLACES[place] ?? place) : `${place} ${label.foot}`}
                label={label}
                useBy={document.useBy}
              />
            ))}
          </ul>
        </section>
      ))}
    </article>
  );
}

function LabelAt({ label, useBy }: { label: Label | null; useBy: string }) {
  if (label === null) return <li className="label" aria-hidden="true" />;
  return (
    <li className="label">
      <div className="label-top">
        <b>{label.food}</b>
        <span>{label.amount}</span>
      </div>
      <div className="label-by">
        <span>{useBy}</span> <b>{label.by}</b>
      </div>
      <div className="label-foot">{label.foot}</div>
    </li>
  );
}
