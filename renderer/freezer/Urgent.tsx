import { dateOf } from '../../core/calendar/clock.ts';
import { addDays } from '../../core/calendar/day.ts';
import type { Gap } from '../../core/freezer/plan-shape.ts';
import { namesWords } from '../../core/words/thaw-text.ts';
import { now } from '../data/now.ts';
import { run } from '../data/query.ts';
import { heavyText, takesText } from '../facts/freezer-text.ts';
import type { Freezer } from '../facts/useFreezer.ts';
import { LevelMark } from '../parts/LevelMark.tsx';
import { words } from '../state/words.ts';
import { endThaws } from './take-out.ts';

/** A meal further off than this waits in its place in the plan. */
const SOON_DAYS = 2;

/** What cannot be done and what to do now; what is past its time. Nothing when there is nothing. */
export function Urgent({ f, writeDown }: { f: Freezer; writeDown: () => void }) {
  const { plan, today, house } = f;
  const unit = house.massUnit;
  const overdue = plan.out.filter((o) => o.state === 'overdue');
  const counter = plan.out.filter((o) => o.thaw.way === 'counter' && (o.state === 'ready' || o.state === 'thawing'));
  // An empty freezer says so in the list itself.
  const gaps = f.stock.packs.length === 0 ? [] : plan.gaps.filter((g) => dateOf(g.at) <= addDays(today, SOON_DAYS));
  const old = plan.foods.filter((food) => food.overdue.length > 0);
  const tooFull = plan.tooFull;
  if (overdue.length + counter.length + gaps.length + old.length === 0 && tooFull === null) return null;
  const tooLate = gaps.some((g) => g.why === 'too-late');
  return (
    <section className="freezer-urgent">
      <h2>{words.freezer.look}</h2>
      {overdue.map((o) => (
        <div key={o.thaw.id} className="line">
          <LevelMark level="act" word={false} />
          <p>
            {words.freezer.overdueThawed(
              takesText(f, [
                { packId: o.thaw.packId, portions: o.thaw.portions, of: portionsOf(f, o.thaw.packId), grams: o.grams },
              ]),
              words.foodText(o.leftGrams, unit),
              words.timeNear(o.clock.useBy, today),
            )}{' '}
            <button type="button" className="link" onClick={() => void endThaws([o.thaw.id], 'thrown')}>
              {words.freezer.thrown}
            </button>{' '}
            <button type="button" className="link" onClick={() => void endThaws([o.thaw.id], 'used')}>
              {words.freezer.usedUp}
            </button>
          </p>
        </div>
      ))}
      {counter.map((o) => (
        <div key={o.thaw.id} className="line">
          <LevelMark level="act" word={false} />
          <p>{words.freezer.counterOut(f.nameOf(o.foodId), words.timeNear(o.clock.useBy, today))}</p>
        </div>
      ))}
      {gaps.map((gap) => (
        <GapLine key={`${gap.foodId} ${gap.at} ${gap.why}`} f={f} gap={gap} />
      ))}
      {tooLate && (
        <p className="line soft">
          <span>
            {`${words.freezer.coldWaterHow} ${words.freezer.alreadyOut}`}{' '}
            <button type="button" className="link" onClick={writeDown}>
              {words.freezer.writeItDown}
            </button>
          </span>
        </p>
      )}
      {tooFull !== null && f.stock.settings.roomGrams !== null && (
        <div className="line">
          <LevelMark level="watch" word={false} />
          <p>
            {words.freezer.tooFull(
              words.timeNear(tooFull.at, today),
              heavyText(tooFull.grams, unit),
              heavyText(f.stock.settings.roomGrams, unit),
            )}
          </p>
        </div>
      )}
      {old.map((food) => (
        <div key={food.foodId} className="line">
          <LevelMark level="watch" word={false} />
          <p>
            {words.freezer.overdueFrozen(
              food.overdue.length,
              f.nameOf(food.foodId),
              words.shortDate(oldest(food.overdue.map((p) => p.bestBefore)), today),
            )}{' '}
            <button
              type="button"
              className="link"
              onClick={() =>
                void run('freezer.takeOut', { packIds: food.overdue.map((p) => p.id), way: 'thrown', on: dateOf(now().local) })
              }
            >
              {words.freezer.thrown}
            </button>
          </p>
        </div>
      ))}
    </section>
  );
}

function portionsOf(f: Freezer, packId: string): number {
  return f.stock.packs.find((p) => p.id === packId)?.portions ?? 1;
}

function oldest<D extends string>(days: readonly (D | null)[]): D {
  return days.filter((d) => d !== null).sort()[0] as D;
}

/** A meal that can't be covered: what is missing first, then what helps. */
function GapLine({ f, gap }: { f: Freezer; gap: Gap }) {
  const names = namesWords(gap.eaters, words);
  const when = words.timeNear(gap.at, f.today);
  const { coldWater } = gap;
  return (
    <div className="line">
      <LevelMark level="watch" word={false} />
      {gap.why === 'none-left' ? (
        <p>
          <b>{words.freezer.noneLeft(f.nameOf(gap.foodId), when, names)}</b>
        </p>
      ) : (
        <p>
          <b>{words.freezer.tooLate(when, words.foodText(gap.grams, f.house.massUnit))}</b> {names}.{' '}
          {coldWater === null
            ? words.freezer.noPackForIt
            : coldWater.inTime
              ? words.freezer.coldWater(
                  takesText(f, coldWater.takes),
                  words.timeNear(coldWater.startBy, f.today),
                  words.freezer.hours(coldWater.hours),
                )
              : words.freezer.coldWaterLate(words.freezer.hours(coldWater.hours))}
        </p>
      )}
    </div>
  );
}
