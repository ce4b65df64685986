import { useRef, useState } from 'react';
import { dateOf } from '../../core/calendar/clock.ts';
import { addDays, type CivilDate } from '../../core/calendar/day.ts';
import { keepingOf } from '../../core/feeding/keeping.ts';
import type { Demand } from '../../core/freezer/demand.ts';
import { WEEK_DAYS } from '../../core/freezer/thaw-list.ts';
import { heavyText } from '../facts/freezer-text.ts';
import { type Freezer, useFreezer } from '../facts/useFreezer.ts';
import { href } from '../links.ts';
import { Why } from '../parts/Why.tsx';
import { words } from '../state/words.ts';
import { BuyPart } from './BuyPart.tsx';
import { CostPart } from './CostPart.tsx';
import { type Begun, DeliveryPart } from './DeliveryPart.tsx';
import { EatersPart } from './EatersPart.tsx';
import { OutsidePart } from './OutsidePart.tsx';
import { CautionPart, ParasitePart } from './ParasitePart.tsx';
import { StockPart } from './StockPart.tsx';
import { ThawList } from './ThawList.tsx';
import { Urgent } from './Urgent.tsx';
import './freezer.css';

/** What to take out today and why, what there is and until when, what to buy; then deliveries and who eats from it. */
export function FreezerPage() {
  const f = useFreezer();
  if (f === null) return <p className="soft">{words.freezer.loading}</p>;
  return <Page f={f} />;
}

function Page({ f }: { f: Freezer }) {
  const [begun, setBegun] = useState<Begun>({ turn: 0, foodId: null, count: null });
  const outside = useRef<HTMLHeadingElement>(null);
  const begin = (foodId: string | null, count: number | null) => setBegun((b) => ({ turn: b.turn + 1, foodId, count }));
  const toOutside = () => {
    outside.current?.focus({ preventScroll: true });
    outside.current?.scrollIntoView();
  };
  return (
    <>
      <Head f={f} putIn={() => begin(null, null)} />
      <Urgent f={f} writeDown={toOutside} />
      <ThawList f={f} />
      <div className="freezer-two">
        <StockPart f={f} />
        <BuyPart f={f} putIn={begin} />
      </div>
      <DeliveryPart f={f} begun={begun} />
      <OutsidePart f={f} heading={outside} />
      <EatersPart f={f} />
      <CostPart f={f} />
      <ParasitePart f={f} />
      <CautionPart />
    </>
  );
}

function Head({ f, putIn }: { f: Freezer; putIn: () => void }) {
  const { rules, plan, house } = f;
  const keeping = keepingOf(rules);
  const grams = plan.foods.reduce((sum, food) => sum + food.grams, 0);
  const packs = plan.foods.reduce((sum, food) => sum + food.packs, 0);
  return (
    <header className="title">
      <div>
        <h1>{words.freezer.title}</h1>
        <p>{words.freezer.lead(rules.thawHours, rules.keepHours)}</p>
        {keeping.longer && (
          <p className="freezer-official">
            {words.freezer.official(keeping.official.hours, words.officialPlace[keeping.official.of])}
          </p>
        )}
      </div>
      <div className="right">
        <p>
          <b className="big freezer-total">{heavyText(grams, house.massUnit)}</b>
        </p>
        <p className="note">
          {words.freezer.packsIn(packs)}; <Lasts f={f} />
        </p>
        <p className="freezer-do">
          <button type="button" className="link" onClick={putIn}>
            {words.freezer.putIn}
          </button>
          <a href={href({ at: 'print', of: 'thaw', id: '', day: null, paper: null })}>{words.freezer.printList}</a>
          <a href={href({ at: 'print', of: 'labels', id: '', day: null, paper: null })}>{words.freezer.labels}</a>
        </p>
      </div>
    </header>
  );
}

/** The first food that runs out says until when the freezer lasts. */
function Lasts({ f }: { f: Freezer }) {
  const wanted = f.plan.foods.filter((food) => food.wanted);
  if (f.stock.packs.length === 0) return words.freezer.nothingYet;
  if (wanted.length === 0) return words.freezer.nobodyEats;
  const first = wanted
    .filter((food) => food.lastsTo !== null)
    .sort((a, b) => ((a.lastsTo ?? '') < (b.lastsTo ?? '') ? -1 : 1))[0];
  if (first === undefined || first.lastsTo === null) return words.freezer.lastsBeyond(f.untilDay);
  const day = dateOf(first.lastsTo);
  const week = addDays(f.today, WEEK_DAYS - 1);
  const eaten = (on: CivilDate) => gramsOf(f.demand, first.foodId, on, on);
  const text = (grams: number) => words.foodText(grams, f.house.massUnit);
  const who = [
    ...new Set(f.demand.filter((d) => d.foodId === first.foodId && d.day >= f.today && d.day <= week).map((d) => d.who)),
  ];
  return (
    <>
      {words.freezer.lastsTo}{' '}
      <Why
        explanation={{
          figure: words.freezer.whyLasts(day),
          how: words.freezer.whyLastsHow(text(first.grams), text(eaten(f.today)), text(eaten(week)), week),
          sum: [
            { what: words.freezer.sumStock, figure: text(first.grams), source: f.nameOf(first.foodId) },
            ...(first.reservedGrams > 0
              ? [{ what: words.freezer.sumReserved, figure: text(first.reservedGrams), source: words.freezer.starters }]
              : []),
            ...who.map((name) => ({
              what: words.freezer.sumEats(name),
              figure: text(
                gramsOf(
                  f.demand.filter((d) => d.who === name),
                  first.foodId,
                  f.today,
                  week,
                ),
              ),
              source: words.freezer.sumSource,
            })),
          ],
        }}
      >
        {words.longDate(day)}
      </Why>
    </>
  );
}

function gramsOf(demand: readonly Demand[], foodId: string, from: CivilDate, until: CivilDate): number {
  return demand.reduce((sum, d) => sum + (d.foodId === foodId && d.day >= from && d.day <= until ? d.grams : 0), 0);
}
