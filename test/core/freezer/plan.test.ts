import { describe, expect, it } from 'vitest';
import { localTime } from '../../../core/calendar/clock.ts';
import { addDays, date } from '../../../core/calendar/day.ts';
import { DEFAULT_RULES, type HouseRules } from '../../../core/feeding/rules.ts';
import { type Demand, eaterDemand } from '../../../core/freezer/demand.ts';
import { DEFAULT_FREEZER, type Pack, packSchema, type Thaw } from '../../../core/freezer/pack.ts';
import { meatKinds, porkDaysLeft } from '../../../core/freezer/parasites.ts';
import { planFreezer, wasteWithin } from '../../../core/freezer/plan.ts';
import type { PlanInput } from '../../../core/freezer/plan-shape.ts';
import { costOf, pricePerKg, shoppingList } from '../../../core/freezer/shopping.ts';
import { coldWaterHours, thawClock } from '../../../core/freezer/thawing.ts';
import { toGrams } from '../../../core/units/mass.ts';
import { ENGLISH } from '../../../core/words/en/catalogue.ts';

const TODAY = date('2026-11-26');
const NOW = localTime('2026-11-26T08:10');
const FOOD = 'food-generic-mix';

let n = 0;
function packs(count: number, fields: Partial<Pack> = {}): Pack[] {
  return Array.from({ length: count }, () => {
    n += 1;
    const grams = fields.grams ?? 500;
    const portions = fields.portions ?? 1;
    return packSchema.parse({
      foodId: FOOD,
      frozenOn: '2026-11-01',
      bestBefore: null,
      price: 4,
      place: '',
      addedInstant: n,
      left: portions,
      gone: null,
      goneOn: null,
      ...fields,
      grams,
      portions,
      id: `pack-${String(n).padStart(6, '0')}`,
    });
  });
}

function thaw(pack: Pack | undefined, at: string, fields: Partial<Thaw> = {}): Thaw {
  n += 1;
  return {
    id: `thaw-${String(n).padStart(6, '0')}`,
    packId: pack?.id ?? '',
    portions: 1,
    at: localTime(at),
    instant: n,
    way: 'refrigerator',
    ended: null,
    endedAt: null,
    ...fields,
  };
}

/** A litter of 600 g a day in three meals, from a few days ago on. */
function litter(rules: HouseRules, days: number, from = addDays(TODAY, -3)): Demand[] {
  const { morning, midday, evening } = rules.mealTimes;
  return Array.from({ length: days + 3 }, (_, i) =>
    [morning, midday, evening].map((clock) => ({
      foodId: FOOD,
      day: addDays(from, i),
      clock,
      grams: 200,
      who: 'Hazel’s litter',
      litterId: 'litter-hazel',
    })),
  ).flat();
}

function input(more: Partial<PlanInput> = {}): PlanInput {
  return {
    now: NOW,
    untilDay: addDays(TODAY, 27),
    rules: DEFAULT_RULES,
    settings: DEFAULT_FREEZER,
    packs: [],
    thaws: [],
    starters: [],
    demand: litter(DEFAULT_RULES, 28),
    ...more,
  };
}

describe('the thaw list', () => {
  it('takes out a day before the meal, says for whom, and by when it is used', () => {
    const plan = planFreezer(input({ packs: packs(12) }));
    const [first] = plan.rows;
    expect(first).toMatchObject({
      out: '2026-11-26T13:00',
      ready: '2026-11-27T13:00',
      useBy: '2026-11-28T13:00',
      officialUseBy: '2026-11-28T13:00',
      grams: 500,
      eaters: [{ who: 'Hazel’s litter', grams: 500 }],
      firstMeal: '2026-11-27T13:00',
      wasteGrams: 0,
    });
    expect(plan.rows.every((r, i) => i === 0 || r.out >= (plan.rows[i - 1]?.out ?? ''))).toBe(true);
  });

  it('says which meals come too soon, and what cold water can do about them', () => {
    const plan = planFreezer(input({ packs: packs(12) }));
    const tooLate = plan.gaps.filter((g) => g.why === 'too-late');
    expect(tooLate.map((g) => g.at)).toEqual(['2026-11-26T13:00', '2026-11-26T20:00', '2026-11-27T07:00']);
    expect(tooLate[0]?.coldWater).toMatchObject({ inTime: true, takes: [{ portions: 1, of: 1, grams: 500 }] });
    expect(tooLate[0]?.coldWater?.startBy.slice(0, 13)).toBe('2026-11-26T11');
  });

  it('counts what is thawed already, and what was eaten of it since', () => {
    const stock = packs(10);
    const out = [thaw(stock[0], '2026-11-24T18:00'), thaw(stock[1], '2026-11-25T12:30'), thaw(stock[2], '2026-11-25T18:00')];
    const left = stock.map((p, i) => (i < 3 ? { ...p, left: 0 } : p));
    const plan = planFreezer(input({ packs: left, thaws: out }));
    // Ready yesterday at 18:00: eaten at 18:00 and this morning, 100 g left for midday.
    expect(plan.out.find((o) => o.thaw.id === out[0]?.id)).toMatchObject({ state: 'ready', leftGrams: 100 });
    expect(plan.out.find((o) => o.thaw.id === out[1]?.id)).toMatchObject({ state: 'thawing', leftGrams: 500 });
    expect(plan.gaps.filter((g) => g.why === 'too-late')).toEqual([]);
  });

  it('tells apart what is over its time', () => {
    const stock = packs(4);
    const plan = planFreezer(
      input({
        packs: [{ ...(stock[0] as Pack), left: 0 }, ...stock.slice(1)],
        thaws: [thaw(stock[0], '2026-11-22T07:00')],
        demand: [],
      }),
    );
    expect(plan.out).toMatchObject([{ state: 'overdue', leftGrams: 500 }]);
  });

  it('plans nothing past its day, and says so', () => {
    const stock = [...packs(2, { bestBefore: date('2026-11-20') }), ...packs(6)];
    const plan = planFreezer(input({ packs: stock }));
    expect(plan.foods[0]).toMatchObject({ packs: 6, overdue: [{ bestBefore: '2026-11-20' }, { bestBefore: '2026-11-20' }] });
    const taken = plan.rows.flatMap((r) => r.takes.map((t) => t.packId));
    expect(taken.some((id) => id === stock[0]?.id || id === stock[1]?.id)).toBe(false);
  });

  it('leaves out packs that were used, given or thrown away', () => {
    const stock = [...packs(3, { gone: 'given', goneOn: TODAY, left: 0 }), ...packs(2)];
    expect(planFreezer(input({ packs: stock })).foods[0]).toMatchObject({ packs: 2, grams: 1000 });
  });

  it('takes packs out only in the evening when she wants that', () => {
    const evening = planFreezer(
      input({ packs: packs(60, { grams: toGrams(250) }), settings: { ...DEFAULT_FREEZER, moveAt: 'evening' } }),
    );
    const planned = evening.rows.slice(1);
    expect(new Set(planned.map((r) => r.out.slice(11)))).toEqual(new Set(['20:00']));
  });

  it('shows the official time beside a longer rule of the house', () => {
    const rules = { ...DEFAULT_RULES, thawHours: 48, keepHours: 72 };
    const [row] = planFreezer(input({ rules, demand: litter(rules, 28), packs: packs(12) })).rows;
    expect(row?.ready.slice(0, 10)).toBe('2026-11-28');
    expect(row?.useBy.slice(0, 10)).toBe('2026-12-01');
    expect(row?.officialUseBy.slice(0, 10)).toBe('2026-11-28');
  });

  it('cuts a block for one small dog', () => {
    const dog = {
      id: 'dog-00000001',
      name: 'Wren',
      foodId: FOOD,
      gramsADay: toGrams(120),
      damId: null,
      meals: 3,
      fromDay: TODAY,
      untilDay: null,
    };
    const demand = eaterDemand([dog], () => DEFAULT_RULES, TODAY, addDays(TODAY, 27));
    const whole = planFreezer(input({ demand, packs: packs(20, { grams: toGrams(454) }) }));
    const cut = planFreezer(input({ demand, packs: packs(20, { grams: toGrams(454), portions: 4 }) }));
    expect(wasteWithin(whole, NOW, 7)).toBeGreaterThan(1000);
    // Three whole blocks go into cold water for the first meals, which no plan can help; then nothing is left over.
    expect(cut.rows.reduce((sum, r) => sum + r.wasteGrams, 0)).toBe(0);
    expect(wasteWithin(cut, NOW, 7)).toBe(3 * (454 - 40));
    expect(cut.rows[0]?.takes).toMatchObject([{ portions: 1, of: 4, grams: 113.5 }]);
  });
});

describe('what is missing', () => {
  it('says until when a food lasts and what to buy by when', () => {
    const stock = packs(6);
    const plan = planFreezer(input({ packs: stock }));
    // 500 g for cold water today and tomorrow morning leave 1 500 g for the plan: 13:00 on the 27th to 13:00 on the 29th, and 100 g.
    expect(plan.foods[0]?.lastsTo).toBe('2026-11-29T13:00');
    const [purchase] = shoppingList(plan, stock, DEFAULT_RULES, TODAY);
    expect(purchase).toMatchObject({ foodId: FOOD, by: '2026-11-28', from: '2026-11-29', to: '2026-12-05' });
    expect(purchase?.grams).toBe(6 * 600 + 100);
    expect(purchase?.packs).toEqual({ count: 8, grams: 500, cost: 32 });
  });

  it('knows no packs of a food that never came', () => {
    const plan = planFreezer(input());
    expect(shoppingList(plan, [], DEFAULT_RULES, TODAY)).toMatchObject([{ by: TODAY, packs: null }]);
  });

  it('puts starter packs aside from the newest end', () => {
    const stock = [...packs(2), ...packs(2, { frozenOn: date('2026-11-20') })];
    const starter = { id: 'starter-1', who: 'Dock', day: date('2026-12-10'), foodId: FOOD, grams: toGrams(900) };
    const plan = planFreezer(input({ packs: stock, starters: [starter], demand: litter(DEFAULT_RULES, 28) }));
    expect(plan.foods[0]).toMatchObject({ grams: 2000, reservedGrams: 1000 });
    const taken = [...plan.rows, ...plan.gaps.flatMap((g) => g.coldWater ?? [])].flatMap((r) => r.takes.map((t) => t.packId));
    expect(taken.every((id) => id === stock[0]?.id || id === stock[1]?.id)).toBe(true);
    const none = planFreezer(input({ packs: [], starters: [starter], demand: [] }));
    expect(none.startersShort).toMatchObject([{ grams: 900 }]);
  });

  it('says when the refrigerator has no room', () => {
    const settings = { ...DEFAULT_FREEZER, roomGrams: 900 };
    const plan = planFreezer(input({ packs: packs(20, { grams: toGrams(1000) }), settings }));
    expect(plan.tooFull?.grams).toBeGreaterThan(900);
    expect(planFreezer(input({ packs: packs(20), settings: { ...settings, roomGrams: 5000 } })).tooFull).toBeNull();
  });

  it('takes smaller portions where the refrigerator is small', () => {
    const settings = { ...DEFAULT_FREEZER, roomGrams: 1300 };
    const stock = [...packs(6, { grams: toGrams(800) }), ...packs(40, { grams: toGrams(200) })];
    const roomy = planFreezer(input({ packs: stock, untilDay: addDays(TODAY, 8) }));
    const small = planFreezer(input({ packs: stock, settings, untilDay: addDays(TODAY, 8) }));
    expect(roomy.rows[0]?.takes[0]?.grams).toBe(800);
    expect(small.tooFull).toBeNull();
  });
});

describe('clocks and money', () => {
  it('gives the counter two hours and no more', () => {
    const at = localTime('2026-11-26T08:00');
    expect(thawClock(DEFAULT_RULES, 'counter', at, 0.5)).toEqual({
      ready: at,
      useBy: '2026-11-26T10:00',
      officialUseBy: '2026-11-26T10:00',
    });
    expect(thawClock(DEFAULT_RULES, 'cold-water', at, 0.4)).toMatchObject({
      ready: '2026-11-26T09:00',
      useBy: '2026-11-26T11:00',
    });
    expect(coldWaterHours(20)).toBeGreaterThan(20);
  });

  it('reckons with the last price', () => {
    const stock = [...packs(1, { price: 2 }), ...packs(1, { price: 4 }), ...packs(1, { price: null })];
    expect(pricePerKg(stock, FOOD)).toBe(8);
    expect(costOf(stock, new Map([[FOOD, 600]]))).toBeCloseTo(4.8);
    expect(costOf(stock, new Map([['other-food', 600]]))).toBeNull();
  });

  it('knows pork, game and fish by their words', () => {
    expect(meatKinds(['Wild boar mince'], ENGLISH.freezer.isMeat)).toEqual(['game']);
    expect(meatKinds(['pork shoulder', 'whole sardines'], ENGLISH.freezer.isMeat)).toEqual(['pork', 'fish']);
    expect(meatKinds(['beef'], ENGLISH.freezer.isMeat)).toEqual([]);
    expect(porkDaysLeft(date('2026-11-20'), TODAY)).toBe(15);
  });
});
