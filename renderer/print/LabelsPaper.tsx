import { clockOf, dateOf, type LocalTime } from '../../core/calendar/clock.ts';
import type { Take } from '../../core/freezer/plan.ts';
import { eatersText } from '../facts/freezer-text.ts';
import type { Freezer } from '../facts/useFreezer.ts';
import type { Paper } from '../links.ts';
import { words } from '../state/words.ts';
import './print.css';
import './freezer-paper.css';

export type LabelSheet = 'small' | 'plain';

/** Labels on a sheet. The small ones are the common sheets of 24 (70 × 37 mm) and of 30 (2 5/8 × 1 in); the plain ones are cut out. */
export const LABELS: Readonly<Record<LabelSheet, Readonly<Record<Paper, { readonly across: number; readonly down: number }>>>> = {
  small: { a4: { across: 3, down: 8 }, letter: { across: 3, down: 10 } },
  plain: { a4: { across: 2, down: 6 }, letter: { across: 2, down: 6 } },
};

/** Names for the places of labels that were used before. */
const PLACES = Array.from({ length: 30 }, (_, i) => `used-${i}`);

export interface Label {
  readonly key: string;
  readonly food: string;
  readonly amount: string;
  readonly who: string;
  readonly out: LocalTime;
  readonly ready: LocalTime;
  readonly useBy: LocalTime;
  readonly official: LocalTime;
}

/** One for each pack or lot of portions: what is thawing or to be used, then what comes out today. */
export function labelsOf(f: Freezer): Label[] {
  const unit = f.house.massUnit;
  const label = (takes: readonly Take[], foodId: string, rest: Omit<Label, 'key' | 'food' | 'amount'>): Label[] =>
    takes.map((take) => ({
      ...rest,
      key: `${take.packId} ${rest.out}`,
      food: f.nameOf(foodId),
      amount:
        take.portions === take.of
          ? words.foodText(take.grams, unit)
          : `${take.portions}/${take.of}, ${words.foodText(take.grams, unit)}`,
    }));
  const out = f.plan.out
    .filter((o) => o.state === 'thawing' || o.state === 'ready')
    .flatMap((o) => {
      const of = f.stock.packs.find((p) => p.id === o.thaw.packId)?.portions ?? o.thaw.portions;
      const take = { packId: o.thaw.packId, portions: o.thaw.portions, of, grams: o.grams };
      const { ready, useBy, officialUseBy: official } = o.clock;
      return label([take], o.foodId, { who: eatersText(o.eaters, unit), out: o.thaw.at, ready, useBy, official });
    });
  const today = f.plan.rows
    .filter((r) => dateOf(r.out) <= f.today)
    .flatMap((r) =>
      label(r.takes, r.foodId, {
        who: eatersText(r.eaters, unit),
        out: r.out,
        ready: r.ready,
        useBy: r.useBy,
        official: r.officialUseBy,
      }),
    );
  return [...out, ...today];
}

/** Labels by sheet; null is a place that was used before. */
export function labelSheets(labels: readonly Label[], most: number, used: number): (Label | null)[][] {
  const places: (Label | null)[] = [...Array.from({ length: used }, () => null), ...labels];
  return Array.from({ length: Math.ceil(places.length / most) }, (_, i) => places.slice(i * most, (i + 1) * most));
}

/** Labels to stick or to cut out: the use-by is the biggest thing on them. */
export function LabelsPaper(props: {
  sheets: readonly (readonly (Label | null)[])[];
  paper: Paper;
  kind: LabelSheet;
  f: Freezer;
}) {
  const { sheets, paper, kind } = props;
  return (
    <article
      className={`plan-paper labels-paper labels-${kind} on-paper`}
      data-paper={paper}
      lang="en"
      aria-label={words.freezerPaper.labelsTitle}
    >
      {sheets.map((labels, i) => (
        <section
          key={labels.find((l) => l !== null)?.key ?? 'empty'}
          className="sheet"
          data-sheet={i + 1}
          data-name={words.freezerPaper.labelsTitle}
          aria-label={words.freezerPaper.sheet(i + 1, sheets.length)}
        >
          <ul className="sheet-body">
            {labels.map((label, place) =>
              label === null ? (
                <li key={PLACES[place] ?? place} className="label" aria-hidden="true" />
              ) : (
                <LabelOf key={label.key} label={label} />
              ),
            )}
          </ul>
        </section>
      ))}
    </article>
  );
}

function LabelOf({ label }: { label: Label }) {
  const time = (t: LocalTime) => words.freezerPaper.atTime(dateOf(t), clockOf(t));
  return (
    <li className="label">
      <div className="label-top">
        <b>{label.food}</b>
        <span>{label.amount}</span>
      </div>
      <div className="label-by">
        <span>{words.freezerPaper.useBy}</span> <b>{time(label.useBy)}</b>
      </div>
      <div className="label-foot">
        {words.freezerPaper.out} {time(label.out)}, {words.freezerPaper.ready} {time(label.ready)}
        {label.official < label.useBy ? `, ${words.freezerPaper.official(time(label.official))}` : ''}
        {label.who === '' ? '' : `. ${label.who}`}
      </div>
    </li>
  );
}
