import { freezingFor, meatKinds, porkDaysLeft } from '../../core/freezer/parasites.ts';
import { type MeatKind, PARASITE_FREEZING, type ParasiteFreezing } from '../../core/reference/freezer/parasites.ts';
import type { Freezer } from '../facts/useFreezer.ts';
import { TableHead } from '../parts/TableHead.tsx';
import { words } from '../state/words.ts';

const rules = (): Partial<Record<MeatKind, string>> => ({
  pork: words.freezer.porkRule,
  game: words.freezer.gameRule,
  fish: words.freezer.fishRule,
});

/** The note on pork, game and fish: first those that are in the freezer, then the whole table. */
export function ParasitePart({ f }: { f: Freezer }) {
  const there = f.plan.foods.filter((food) => food.packs > 0);
  const found = there.flatMap(({ foodId }) => {
    const food = f.catalogue.find(foodId);
    const names = [f.nameOf(foodId), ...(food?.recipe.map((r) => words.foods.nameOf(r)) ?? [])];
    const kinds = meatKinds(names, (kind, name) => words.freezer.isMeat(kind, name));
    return kinds.map((kind) => ({ foodId, kind }));
  });
  const shown = new Set(found.flatMap(({ kind }) => freezingFor(kind)));
  return (
    <section className="part">
      <h2>{words.freezer.parasites}</h2>
      <p className="soft">{words.freezer.parasitesLead}</p>
      {found.map(({ foodId, kind }) => (
        <p key={`${foodId} ${kind}`} className="line">
          <b>{f.nameOf(foodId)}</b>
          <span>{kind === 'pork' ? words.freezer.pork(porkLeft(f, foodId)) : rules()[kind]}</span>
        </p>
      ))}
      <details className="freezer-table">
        <summary>{[words.freezer.porkRule, words.freezer.gameRule, words.freezer.fishRule].join(' ')}</summary>
        <table>
          <TableHead heads={[words.freezer.parasite, words.freezer.freeze, words.freezer.source]} />
          <tbody>
            {PARASITE_FREEZING.map((line) => (
              <tr key={line.parasite}>
                <th scope="row">
                  {words.freezer.parasiteNames[line.parasite]}
                  {shown.has(line) && <span className="note"> {words.freezer.onYourPacks}</span>}
                </th>
                <td>{freezeText(line)}</td>
                <td className="note">{`${line.source} (${words.foods.known[line.known]})`}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </details>
    </section>
  );
}

function freezeText(line: ParasiteFreezing): string {
  return line.freeze.length === 0
    ? words.freezer.never
    : line.freeze.map((o) => words.freezer.enough(o.celsius, o.days)).join(words.freezer.or);
}

/** Days that the youngest pork still has to stay frozen. */
function porkLeft(f: Freezer, foodId: string): number {
  const days = f.stock.packs
    .filter((p) => p.foodId === foodId && p.gone === null && p.left > 0)
    .map((p) => porkDaysLeft(p.frozenOn, f.today));
  return Math.max(0, ...days);
}

export function CautionPart() {
  return (
    <section className="part">
      <h2>{words.freezer.cautions}</h2>
      {words.freezer.cautionLines.map((text) => (
        <p key={text} className="line">
          {text}
        </p>
      ))}
    </section>
  );
}
