import type { EarlierPlan } from '../../../core/homing/earlier-plan.ts';
import type { Paper } from '../../links.ts';
import { CollarRibbon } from '../../parts/CollarBand.tsx';
import { MealLadder } from '../../parts/ladder/MealLadder.tsx';
import { PartHead, Sheet, WriteOn } from './Sheet.tsx';
import { WeightPicture } from './WeightPicture.tsx';
import { words } from './words.ts';

/** Letter is 17 mm lower than A4, which the two pictures give. */
const LADDER_HIGH: Record<Paper, number> = { a4: 254, letter: 216 };

/** What to do tonight, and where it goes: whose plan, this week, the meal ladder, the weights. */
export function SheetOne({ document, paper }: { document: EarlierPlan; paper: Paper }) {
  const { ladder, weights } = document;
  // One tread is no ladder: a grown dog gets the same every day.
  const climbs = ladder.steps.length > 1;
  return (
    <Sheet document={document} n={1} thin={!climbs}>
      <CollarRibbon collar={document.collar} width={184} height={13} />
      <Whose document={document} />
      <Week document={document} />
      {climbs && (
        <section>
          <PartHead heading={ladder.heading} note={ladder.note} />
          <MealLadder
            steps={ladder.steps}
            born={ladder.bornOn}
            nowDay={ladder.nowDay}
            unit={document.units.amount}
            paper
            paperHigh={LADDER_HIGH[paper]}
          />
        </section>
      )}
      <section>
        <PartHead heading={weights.heading} note={weights.note} />
        {weights.own.length > 0 ? (
          <div className="weights-row">
            <WeightPicture document={document} />
            <div className="weights-facts">
              {weights.facts.map((f) => (
                <p key={f.text}>
                  {f.figure !== '' && <strong>{f.figure}</strong>}
                  {f.text}
                </p>
              ))}
            </div>
          </div>
        ) : (
          <WeightsToWrite document={document} />
        )}
      </section>
    </Sheet>
  );
}

/** Sizes of the name by its length, in points: a very long one wraps in a smaller size. */
const NAME_SIZES = [
  [11, 44],
  [16, 34],
  [26, 25],
  [48, 18],
] as const;

function nameSize(name: string): number {
  return NAME_SIZES.find(([longest]) => name.length <= longest)?.[1] ?? 14;
}

function Whose({ document }: { document: EarlierPlan }) {
  const { contact, name } = document;
  return (
    <header className="whose">
      <div>
        <h1 style={{ fontSize: `${nameSize(name)}pt` }}>
          <bdi>{name}</bdi>
        </h1>
        <dl>
          {document.facts.map((f) => (
            <div key={f.label}>
              <dt>{f.label}</dt>
              <dd>{f.value}</dd>
            </div>
          ))}
        </dl>
      </div>
      <address className="ask">
        <p>{contact.lead}</p>
        {contact.name === '' ? <WriteOn label={words.paper.name} /> : <p className="ask-name">{contact.name}</p>}
        {contact.address !== '' && <p>{contact.address}</p>}
        {contact.phone === '' ? <WriteOn label={words.paper.phone} /> : <p className="ask-phone">{contact.phone}</p>}
        {contact.email !== '' && <p>{contact.email}</p>}
      </address>
    </header>
  );
}

const MM_PER_PT = 0.3528;
/** Width of a figure of the heading face over its size, and of the small unit behind it; measured, with a little air. */
const FIGURE_WIDE = 0.6;
const UNIT_WIDE = 0.3;

/** The largest size in points, up to `most`, at which a figure with its unit fits a width in mm. */
function fitting(figure: string, unit: string, mm: number, max: number): number {
  const wide = figure.length * FIGURE_WIDE + unit.length * UNIT_WIDE;
  return Math.min(max, Math.floor(mm / (wide * MM_PER_PT)));
}

const DAY_MM = 70;
const SHEET_MM = 184;

function Week({ document }: { document: EarlierPlan }) {
  const { week, units } = document;
  if (week === null) return <p className="week-missing">{document.missing}</p>;
  const day = words.foodFigure(week.dayGrams, units.amount);
  const wide = (SHEET_MM - DAY_MM) / week.meals.length - 8;
  const size = Math.min(...week.meals.map((m) => fitting(words.foodFigure(m.grams, units.amount), units.amount, wide, 42)));
  return (
    <section className="week">
      <div className="week-day">
        <h2>{week.heading}</h2>
        <p>{week.dates}</p>
        <p className="week-amount" style={{ fontSize: `${fitting(day, '', 40, 60)}pt` }}>
          {day}
          <span>
            {units.amount} <br />
            {words.paper.aDay}
          </span>
        </p>
      </div>
      <div className="week-meals">
        <p className="week-lead">{week.lead}</p>
        <ul data-meals={week.meals.length}>
          {week.meals.map((m) => (
            <li key={m.name}>
              <span className="meal-name">{words.paper.meals[m.name]}</span> <span className="meal-time">{m.time}</span>{' '}
              <span className="meal-amount" style={{ fontSize: `${size}pt` }}>
                {words.foodFigure(m.grams, units.amount)}
                <span>{units.amount}</span>
              </span>
            </li>
          ))}
        </ul>
      </div>
      <p className="week-basis">{week.basis}</p>
    </section>
  );
}

const WEEKS_TO_WRITE = 18;

/** Nothing weighed yet: the empty form itself. */
function WeightsToWrite({ document }: { document: EarlierPlan }) {
  const dates = document.table.groups.flatMap((g) => g.rows.map((r) => r.from)).slice(0, WEEKS_TO_WRITE);
  return (
    <ul className="to-write" aria-label={words.paper.writeHere}>
      {dates.map((d) => (
        <li key={d}>
          <span>{d}</span>
          <span>{document.units.weight}</span>
        </li>
      ))}
    </ul>
  );
}
