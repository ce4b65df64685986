import { dateOf } from '../../core/calendar/clock.ts';
import { addDays, type CivilDate } from '../../core/calendar/day.ts';
import type { Demand } from '../../core/freezer/demand.ts';
import { costOf } from '../../core/freezer/shopping.ts';
import { inTheHouse } from '../../core/litter/in-the-house.ts';
import { useQuery } from '../data/query.ts';
import { heavyText, moneyText } from '../facts/freezer-text.ts';
import type { Freezer } from '../facts/useFreezer.ts';
import { type LitterFacts, useLittersInHouse } from '../facts/useLitter.ts';
import { Why } from '../parts/Why.tsx';
import { words } from '../state/words.ts';

/** Costs reach back no further than this. */
const MOST_DAYS = 200;

/** What a puppy costs a day, and the litter so far, by the last price of each food. */
export function CostPart({ f }: { f: Freezer }) {
  const litters = useLittersInHouse();
  const oldest = litters.map((l) => dateOf(l.litter.whelpedAt)).sort()[0] ?? f.today;
  const from = [oldest, addDays(f.today, -MOST_DAYS)].sort()[1] ?? oldest;
  const demand = useQuery('freezer.demand', { from, until: f.today }).value?.demand ?? [];
  const fed = litters.filter((l) => demand.some((d) => d.litterId === l.litter.id));
  const priced = fed.filter((l) => costOf(f.stock.packs, gramsByFood(demand, l.litter.id, f.today, f.today)) !== null);
  return (
    <section className="part">
      <h2>{words.freezer.costs}</h2>
      {priced.map((l) => (
        <LitterCost key={l.litter.id} f={f} facts={l} demand={demand} from={from} />
      ))}
      {priced.length < fed.length && <p className="line soft">{words.freezer.costMissing}</p>}
      {fed.length === 0 && <p className="line soft">{words.freezer.costNobody}</p>}
    </section>
  );
}

function gramsByFood(demand: readonly Demand[], litterId: string, from: CivilDate, until: CivilDate): Map<string, number> {
  const grams = new Map<string, number>();
  for (const d of demand) {
    if (d.litterId === litterId && d.day >= from && d.day <= until) grams.set(d.foodId, (grams.get(d.foodId) ?? 0) + d.grams);
  }
  return grams;
}

function LitterCost(props: { f: Freezer; facts: LitterFacts; demand: readonly Demand[]; from: CivilDate }) {
  const { f, facts, demand, from } = props;
  const { litter, puppies } = facts;
  const { money } = f.stock.settings;
  const here = puppies.filter((p) => inTheHouse(p, f.today)).length;
  const lines: [string, Map<string, number>, number][] = [
    [words.freezer.costPerPuppy(words.litterName(litter)), gramsByFood(demand, litter.id, f.today, f.today), Math.max(1, here)],
    [words.freezer.costToday, gramsByFood(demand, litter.id, f.today, f.today), 1],
    [words.freezer.costSoFar, gramsByFood(demand, litter.id, from, f.today), 1],
  ];
  return (
    <table className="freezer-costs">
      <tbody>
        {lines.map(([what, grams, among]) => {
          const cost = costOf(f.stock.packs, grams);
          if (cost === null) return null;
          const all = [...grams.values()].reduce((sum, g) => sum + g, 0);
          const figure = moneyText(cost / among, money);
          const how = words.freezer.costHow(
            heavyText(all / among, f.house.massUnit),
            moneyText(all > 0 ? (cost / all) * 1000 : 0, money),
          );
          return (
            <tr key={what}>
              <th scope="row">{what}</th>
              <td className="figure">
                <Why explanation={{ figure: `${figure}.`, how, sum: [{ what: how, figure, source: words.freezer.costSource }] }}>
                  {figure}
                </Why>
              </td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}
