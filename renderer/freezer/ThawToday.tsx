import { clockOf, dateOf } from '../../core/calendar/clock.ts';
import { reasonText, takesText } from '../facts/freezer-text.ts';
import { useFreezer } from '../facts/useFreezer.ts';
import { href } from '../links.ts';
import { words } from '../state/words.ts';
import { TakeOutBox } from './ThawList.tsx';
import { takeOut } from './take-out.ts';
import './freezer.css';

/** On the page of a litter: what comes out of the freezer today, for whomever it is. Nothing before anyone keeps packs in it. */
export function ThawToday() {
  const f = useFreezer();
  if (f === null || f.stock.packs.length === 0) return null;
  const rows = f.plan.rows.filter((r) => dateOf(r.out) <= f.today);
  const isOut = f.plan.out.some((o) => o.state === 'thawing' && dateOf(o.thaw.at) === f.today);
  if (rows.length === 0 && !isOut && !f.plan.foods.some((food) => food.wanted)) return null;
  return (
    <section className="part">
      <h2>{words.freezer.outOfFreezer}</h2>
      {rows.map((row) => (
        <div key={`${row.foodId} ${row.out}`} className="line thaw-line">
          <TakeOutBox what={takesText(f, row.takes)} onTick={() => void takeOut(row.takes)} />
          <p>
            <b>{takesText(f, row.takes)}</b>
            <br />
            <span className="note">
              {clockOf(row.out)}; {reasonText(f, row)}
            </span>
          </p>
        </div>
      ))}
      <p className="line soft">
        <span>
          {rows.length === 0 ? `${isOut ? words.freezer.allOut : words.freezer.nothingToday} ` : ''}
          <a href={href({ at: 'freezer' })}>{words.freezer.toFreezer}</a>
        </span>
      </p>
    </section>
  );
}
