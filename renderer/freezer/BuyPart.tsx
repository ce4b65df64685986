import type { Purchase } from '../../core/freezer/shopping.ts';
import { heavyText, moneyText } from '../facts/freezer-text.ts';
import type { Freezer } from '../facts/useFreezer.ts';
import { Why } from '../parts/Why.tsx';
import { words } from '../state/words.ts';

/** What to buy and by when, and what the week is expected to throw away. */
export function BuyPart({ f, putIn }: { f: Freezer; putIn: (foodId: string, count: number | null) => void }) {
  const unit = f.house.massUnit;
  const waste = words.foodText(f.wasteGrams, unit);
  const isExact = f.plan.foods.every((food) => food.exact);
  const wanted = f.plan.foods.some((food) => food.wanted);
  return (
    <section>
      <h2>{words.freezer.toBuy}</h2>
      {f.purchases.map((p) => (
        <PurchaseLine key={p.foodId} f={f} purchase={p} putIn={putIn} />
      ))}
      {f.purchases.length === 0 && wanted && <p className="line soft">{words.freezer.nothingToBuy(f.untilDay)}</p>}
      <p className="line soft">
        <span>
          {words.freezer.expectedWaste}{' '}
          <b className="freezer-ink">
            <Why
              explanation={{
                figure: words.freezer.whyWaste(waste),
                how: isExact ? words.freezer.whyWasteHow : words.freezer.whyWasteNotProved,
                sum: [{ what: words.freezer.sumThawed, figure: waste, source: words.freezer.sumSource }],
              }}
            >
              {waste}
            </Why>
          </b>
        </span>
      </p>
      {f.plan.foods
        .filter((food) => !food.exact)
        .map((food) => (
          <p key={food.foodId} className="note">
            {words.freezer.notProved(f.nameOf(food.foodId))}
          </p>
        ))}
    </section>
  );
}

function PurchaseLine({
  f,
  purchase: p,
  putIn,
}: {
  f: Freezer;
  purchase: Purchase;
  putIn: (foodId: string, count: number | null) => void;
}) {
  const unit = f.house.massUnit;
  const food = f.nameOf(p.foodId);
  const what = p.packs === null ? words.freezer.buyGrams(heavyText(p.grams, unit), food) : words.freezer.buy(p.packs.count, food);
  const [from, to] = [words.shortDate(p.from, f.today), words.shortDate(p.to, f.today)];
  const more = [
    p.packs === null ? '' : words.freezer.each(words.foodText(p.packs.grams, unit)),
    words.freezer.buyFor(heavyText(p.packs === null ? p.grams : p.packs.count * p.packs.grams, unit), from, to),
    p.packs?.cost == null ? '' : words.freezer.cost(moneyText(p.packs.cost, f.stock.settings.money)),
  ];
  return (
    <div className="line">
      <p className="freezer-buy">
        <b>{what}</b>
        {p.by <= f.today ? words.freezer.byToday : words.freezer.by(words.longDate(p.by))}
        <br />
        <span className="note">{more.filter((t) => t !== '').join('; ')}</span>
      </p>
      <button
        type="button"
        className="link"
        aria-label={words.freezer.putThemInWhat(what)}
        onClick={() => putIn(p.foodId, p.packs?.count ?? null)}
      >
        {words.freezer.putThemIn}
      </button>
    </div>
  );
}
