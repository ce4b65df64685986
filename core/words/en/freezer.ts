/** Sentences of the freezer: the thaw list, what there is, what to buy, who eats from it, labels. */

import { clockOf, dateOf, type LocalTime } from '../../calendar/clock.ts';
import { addDays, type CivilDate } from '../../calendar/day.ts';
import type { ThawWay, WayOut } from '../../freezer/pack.ts';
import type { ToldMeat } from '../../freezer/parasites.ts';
import { COUNTER_IN_THE_TRADE, REFREEZING } from '../../reference/freezer/keeping.ts';
import type { Parasite } from '../../reference/freezer/parasites.ts';
import { dayOfWeek, longDate, shortDate, shortDay } from './dates.ts';

const PARTS: Record<string, string> = {
  '1/2': 'half',
  '1/3': 'a third of',
  '2/3': 'two thirds of',
  '1/4': 'a quarter of',
  '3/4': 'three quarters of',
};

/** "today 18:30", "tomorrow 07:00", "Fri 18:30", with the date beyond a week. */
export function timeNear(t: LocalTime, today: CivilDate): string {
  const day = dateOf(t);
  if (day === today) return `today ${clockOf(t)}`;
  if (day === addDays(today, 1)) return `tomorrow ${clockOf(t)}`;
  if (day === addDays(today, -1)) return `yesterday ${clockOf(t)}`;
  return day > addDays(today, 6) || day < today ? `${shortDate(day, today)} ${clockOf(t)}` : `${shortDay(day)} ${clockOf(t)}`;
}

function count(n: number, word: string): string {
  return `${n} ${word}${n === 1 ? '' : 's'}`;
}

/** Whole days said as days, other times as hours. */
function span(hours: number): string {
  if (hours === 24) return 'a day';
  return hours % 24 === 0 ? count(hours / 24, 'day') : `${hours} hours`;
}

function part(portions: number, of: number): string {
  const divisor = of % portions === 0 ? portions : 1;
  const named = PARTS[`${portions / divisor}/${of / divisor}`];
  return named ?? `${portions} of ${of} portions of`;
}

const WAYS: Record<ThawWay, string> = {
  refrigerator: 'in the refrigerator',
  'cold-water': 'in cold water',
  counter: 'on the counter',
};
const OUT: Record<WayOut, string> = { used: 'used', given: 'given away', thrown: 'thrown away' };

/** How meats are called in the names of foods. */
const MEAT_WORDS: Record<ToldMeat, RegExp> = {
  game: /\b(game|venison|deer|elk|moose|reindeer|bear|boar|wild|hare|horse)\b/i,
  pork: /\b(pork|pig|pig’s|hog|ham|bacon|trotters?|gammon)\b/i,
  fish: /\b(fish|salmon|trout|herring|mackerel|sardines?|sprats?|cod|anchov(y|ies)|pilchards?)\b/i,
};
const PARASITES: Record<Parasite, string> = {
  'trichinella-thin-pork': 'Trichinella in pork up to 6 inches (15 cm) thick',
  'trichinella-thick-pork': 'Trichinella in pork 6 to 27 inches (15 to 69 cm) thick',
  'trichinella-game': 'Trichinella in game, bear, wild boar, horse',
  toxoplasma: 'Toxoplasma cysts',
  taenia: 'Taenia cysticerci',
  neospora: 'Neospora, Sarcocystis',
  anisakis: 'Anisakis, and what carries salmon poisoning',
};

export const freezerWords = {
  /** A weight of many packs, one decimal. */
  heavy: (unit: 'kg' | 'lb', weight: number) => `${weight.toFixed(1)}\u00a0${unit}`,
  /** The bounds of what a dog eats in a day. */
  eaterBounds: ['1 g', '10 kg'] as const,
  title: 'Freezer',
  loading: 'Opening the freezer …',
  lead: (thawHours: number, keepHours: number) =>
    `Thawed in the refrigerator for ${span(thawHours)}, fed within ${keepHours} hours after.`,
  official: (hours: number, where: string) =>
    `Your rule is longer than the official time: within ${span(hours)} of thawing (${where}).`,
  packsIn: (n: number) => `in ${count(n, 'pack')}`,
  lastsTo: 'lasts to',
  lastsBeyond: (day: CivilDate) => `lasts beyond ${longDate(day)}`,
  nothingYet: 'nothing written down yet',
  nobodyEats: 'nobody eats from it yet',
  empty: 'Nothing is written down yet. Write down the first packs below.',
  putIn: 'Put packs in',

  thawList: 'Thaw list',
  thawing: 'thawing',
  toBeUsed: 'to be used',
  tick: 'tick: use by',
  outHead: 'out',
  whatWhy: 'what and why',
  week: 'the week',
  nothingToThaw: 'Nothing has to come out in the next seven days.',
  today: 'today',
  sinceHead: 'out',
  manyTimes: 'over the day',
  takeOut: (what: string) => `Take out now: ${what}`,
  takenOut: (what: string, ready: string) => `${what}: taken out. Ready ${ready}.`,
  packs: (n: number, food: string, each: string) => `${count(n, 'pack')} ${food}, ${each}`,
  partOf: (portions: number, of: number, food: string, each: string) =>
    portions === 1 && of === 2 ? `half a pack ${food}, ${each}` : `${part(portions, of)} a pack ${food}, ${each}`,
  cut: (n: number) => `cut in ${n} half frozen, the rest back while it is icy`,
  until: (from: string, to: string) => (from === to ? from : `${from} to ${to}`),
  eats: (who: string, grams: string) => `${who} ${grams}`,
  and: (names: readonly string[]) =>
    names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names.at(-1) ?? ''}`,
  rest: (who: string) => `the rest ${who}`,
  waste: (grams: string) => `${grams} expected to be left over`,
  officialUseBy: (when: string) => `official: use by ${when}`,
  barLabel: (out: string, ready: string, useBy: string) => `Out ${out}, ready ${ready}, use by ${useBy}.`,
  outNow: (when: string) => `out since ${when}`,
  ready: (when: string) => `ready ${when}`,
  useBy: (when: string) => `use by ${when}`,
  left: (grams: string) => `about ${grams} left`,
  eaten: 'eaten, by the meals since',
  thawedBy: (way: ThawWay) => WAYS[way],
  usedUp: 'Used up',
  thrown: 'Thrown away',
  usedUpWhat: (what: string) => `Used up: ${what}`,
  thrownWhat: (what: string) => `Thrown away: ${what}`,

  look: 'Look at this first',
  overdueThawed: (what: string, grams: string, when: string) =>
    `${what}, ${grams}: past its time since ${when}. Throw it away; do not feed it and do not freeze it again.`,
  counterOut: (what: string, when: string) =>
    `${what} thawed on the counter: feed it by ${when} or throw it away. Officially two hours out of the cold, one in great heat (USDA, second-hand). Breeders keep such a pack ${COUNTER_IN_THE_TRADE.value.days} days in the refrigerator: ${COUNTER_IN_THE_TRADE.source}, and not what this program goes by.`,
  overdueFrozen: (n: number, food: string, day: string) =>
    `${count(n, 'pack')} ${food} past the day on the pack (${day}). Left out of the plan.`,
  tooLate: (when: string, grams: string) => `${when}: ${grams} will not be thawed in time.`,
  coldWater: (what: string, by: string, hours: string) => `Into cold water by ${by}, about ${hours}: ${what}.`,
  coldWaterHow:
    'Cold water: in a bag that does not leak, changed every half hour, fed at once; nothing of it is kept (USDA, seen). Never on the counter.',
  coldWaterLate: (hours: string) =>
    `Cold water would take about ${hours}: too late as well. Feed something thawed, or feed later.`,
  /** To the half hour. */
  hours: (h: number) => (h < 1.25 ? 'an hour' : `${Math.round(h * 2) / 2} hours`),
  noPackForIt: 'There is no pack for it. Feed another food.',
  alreadyOut: 'Something is thawed already that is not written down? Write it down, and the list is right again.',
  writeItDown: 'Write it down',
  noneLeft: (food: string, when: string, who: string) => `${food}: nothing left from ${when} for ${who}.`,
  tooFull: (when: string, grams: string, room: string) =>
    `${when} the refrigerator would hold ${grams}, and it has room for ${room}. Buy smaller packs, cut them in portions, or make room.`,
  notProved: (food: string) => `${food}: packs of very many weights. This plan is good, but a better one may exist.`,

  inFreezer: 'In the freezer',
  food: 'food',
  packsHead: 'packs',
  gramsHead: (unit: string) => (unit === 'g' ? 'grams' : 'ounces'),
  lastsHead: 'lasts to',
  unused: 'not in any plan',
  beyond: (day: CivilDate, today: CivilDate) => `beyond ${shortDate(day, today)}`,
  perPack: (food: string, each: string) => `${food}, ${each}`,
  cutIn: (portions: number) => `cut in ${portions}`,
  openPack: (what: string) => `Show the packs: ${what}`,
  more: 'packs',
  batch: (n: number, frozen: string) => `${count(n, 'pack')} frozen ${frozen}`,
  batchPart: (left: number, of: number, frozen: string) => `1 pack frozen ${frozen}, ${left} of ${of} portions left`,
  bestBeforeIs: (day: string) => `best before ${day}`,
  overdueWord: 'past its day',
  howMany: 'how many',
  wayOut: (way: WayOut) => OUT[way],
  gone: (n: number, food: string, way: WayOut) => `${count(n, 'pack')} ${food} ${OUT[way]}.`,
  countIt: 'Count the freezer',
  counting: 'Write what is really there. What lacks counts as used, the oldest first; what is too much is added like the newest.',
  there: (what: string) => `really there: ${what}`,
  saveCount: 'Save the count',
  stopCount: 'Leave it',
  counted: 'Counted.',
  labels: 'Labels to print',
  printList: 'Print the thaw list',

  toBuy: 'To buy',
  nothingToBuy: (day: CivilDate) => `Enough is there until ${longDate(day)}.`,
  buy: (n: number, food: string) => `${count(n, 'pack')} ${food}`,
  buyGrams: (grams: string, food: string) => `${grams} ${food}`,
  by: (day: string) => ` by ${day}`,
  byToday: ' today',
  buyFor: (grams: string, from: string, to: string) => (from === to ? `${grams}, for ${from}` : `${grams}, for ${from} to ${to}`),
  each: (size: string) => `packs of ${size}`,
  cost: (money: string) => `about ${money}`,
  putThemIn: 'Put them in',
  putThemInWhat: (what: string) => `Put them in: ${what}`,
  expectedWaste: 'Expected to be thrown away this week:',

  whyLasts: (day: CivilDate | null) => (day === null ? 'Enough for all the days planned.' : `${longDate(day)}.`),
  whyLastsHow: (stock: string, today: string, later: string, laterDay: CivilDate) =>
    `${stock} in stock, less what everyone eats by forecast weight: ${today} today, ${later} on ${longDate(laterDay)}.`,
  whyWaste: (grams: string) => `${grams}.`,
  whyWasteHow: 'Thawed by this plan and not eaten within its time. No plan with these packs throws away less.',
  whyWasteNotProved:
    'Thawed by this plan and not eaten within its time. A better plan may exist: the packs are of very many weights.',
  sumStock: 'in stock and good',
  sumReserved: 'put aside for starter packs',
  sumEats: (who: string) => `${who} eats, next seven days`,
  sumSource: 'your rules, the weights and their forecast',
  sumThawed: 'thawed in the next seven days',

  delivery: 'Put packs in',
  deliveryLead: 'How many, how heavy, Enter. The rest is as last time.',
  count: 'packs',
  weight: 'weight of one',
  foodIs: 'food',
  portions: 'can be cut in',
  frozenOn: 'frozen on',
  bestBefore: 'best before',
  price: 'price of one',
  place: 'place',
  add: 'Put in',
  added: (n: number, food: string, each: string) => `${count(n, 'pack')} ${food} of ${each} put in.`,
  needWeight: 'Write what one pack weighs.',
  packTooHeavy: 'A pack is from 1 g to 30 kg.',
  frozenLater: 'That day is still to come.',
  bestBeforeEarly: 'Best before is before the day it was frozen.',
  foodsLink: 'Another food? Write it down under Foods.',
  examples: { count: '10', portions: '4', price: '3.50', room: '8', meals: '2' },

  outside: 'Taken out otherwise',
  outsideLead:
    'A pack that was forgotten in the refrigerator, put in cold water, or left on the counter. Its clock starts when it came out.',
  which: 'which pack',
  howManyPortions: 'portions',
  whole: 'the whole pack',
  way: 'thawed',
  ways: WAYS,
  when: 'out since',
  write: 'Write it down',
  written: (what: string, useBy: string) => `${what}: written down, use by ${useBy}.`,
  notPlanned: 'Nothing is planned to thaw on the counter or in warm water. If it has happened, write down when it came out.',
  beforeFrozen: (day: string) => `By its label the pack was frozen on ${day}, after that time.`,
  later: 'That time is still to come. Tick it off when it comes out.',
  counterRule: `Never on the counter. Officially: fed or thrown away within two hours of leaving the cold, one hour above 32 °C (USDA, second-hand). In the trade such a pack is kept ${COUNTER_IN_THE_TRADE.value.days} days in the refrigerator: ${COUNTER_IN_THE_TRADE.source}. The program goes by the two hours.`,
  coldRule: 'From cold water it is fed at once, and nothing of it is kept or frozen again (USDA, seen).',
  tooManyPortions: (left: number) => `Only ${count(left, 'portion')} left in that pack.`,

  eaters: 'Who eats from it',
  eatersLead: 'The litters are in by themselves, from the first bowl: by weaning plan, rules, rotation and forecast weights.',
  litterEats: (grams: string) => `${grams} today`,
  notYet: 'no bowls yet',
  dog: 'dog',
  addDog: 'Another dog',
  dogName: 'name',
  dogGrams: 'amount a day',
  dogMeals: 'meals a day',
  dogFrom: 'from',
  dogUntil: 'until, when it ends',
  dogFollows: 'follows',
  fixed: 'the amount written here',
  dam: (name: string) => `the need of ${name}, the dam`,
  saveDog: 'Save',
  removeDog: (name: string) => `Remove ${name}`,
  remove: 'Remove',
  change: 'Change',
  endsEarly: 'That is before the first day.',
  /** One who was erased has no name. */
  buyer: (name: string) => (name === '' ? 'a buyer' : name),
  removeStarter: (who: string) => `Remove the starter pack for ${who}`,
  dogLine: (grams: string, food: string, meals: number) => `${grams} a day of ${food} in ${count(meals, 'meal')}`,
  damLine: (food: string) => `by her need, of ${food}`,
  needName: 'Write a name.',
  starters: 'Starter packs for new homes',
  startersLead: 'Whole packs are put aside for them, the newest ones; the oldest are eaten here.',
  addStarter: 'A starter pack',
  starterWho: 'for',
  starterDay: 'goes on',
  starterGrams: 'how much',
  saveStarter: 'Put aside',
  starterLine: (grams: string, food: string, day: string) => `${grams} of ${food}, ${day}`,
  starterShort: (grams: string) => `${grams} still to buy`,
  settings: 'How you do it',
  moveAt: 'packs come out',
  moveAts: { meals: 'at any mealtime: least is thrown away', evening: 'in the evening only: one look a day' },
  room: 'room in the refrigerator',
  roomHint: 'kg of meat; may stay empty',
  money: 'currency',
  moneyHint: 'written before prices, such as £',

  costs: 'What it costs',
  costPerPuppy: (litter: string) => `${litter}: a puppy, today`,
  costToday: 'the whole litter, today',
  costSoFar: 'the litter so far',
  costHow: (grams: string, price: string) => `${grams} at ${price} a kg, the last price written down.`,
  costSource: 'your prices; amounts by your rules',
  costMissing: 'Write a price with the next delivery of every food they eat, and the cost stands here.',
  costNobody: 'No litter eats from the freezer yet.',

  isMeat: (kind: ToldMeat, name: string) => MEAT_WORDS[kind].test(name),
  parasiteNames: PARASITES,
  parasites: 'Freezing and parasites',
  parasitesLead:
    'Freezing kills some parasites and no bacteria. A freezer at home may be warmer than its dial says: put a thermometer in.',
  pork: (days: number) =>
    days === 0
      ? 'Pork: has had its 21 days at −18 °C or colder.'
      : `Pork: ${count(days, 'day')} more at −18 °C or colder before it is fed.`,
  porkRule: 'Pork: 21 days at −18 °C or colder, in packs up to 15 cm thick.',
  gameRule:
    'Game, wild boar, bear, horse: freezing is not accepted against Trichinella. Never feed raw wild boar or bear; cook it.',
  fishRule: 'Fish: 7 days at −20 °C or colder. Salmon and trout can carry salmon poisoning.',
  parasite: 'parasite',
  freeze: 'freeze',
  source: 'source',
  enough: (celsius: number, days: number) => `${String(celsius).replace('-', '−')}\u00a0°C ${count(days, 'day')}`,
  or: ' or ',
  never: 'freezing does not do; cook',
  onYourPacks: 'in your freezer',

  cautions: 'Cautions',
  cautionLines: [
    'Thaw in the refrigerator at 4 °C or colder (FoodSafety.gov, Food Standards Scotland), never on the counter or in warm water. Freezer at −18 °C or colder.',
    `Thawed raw meat is not frozen again. UK and Ireland: never freeze raw meat again. US: allowed when it thawed in the refrigerator, with loss of quality; never after water or a microwave, unless cooked (${REFREEZING.source}, ${REFREEZING.known}).`,
    'Cutting a half frozen pack and putting the icy rest back is common practice, no source. Smaller packs are safer.',
    'Keeping times hold for mince, poultry and offal. Wash hands, bowls and surfaces after raw meat. Children under five do not touch it.',
  ],

  outOfFreezer: 'Out of the freezer today',
  toFreezer: 'To the freezer',
  allOut: 'Everything for today is out.',
  nothingToday: 'Nothing has to come out today.',
} as const;

export const freezerPaperWords = {
  listTitle: (day: CivilDate) => `Thaw list, ${longDate(day)}`,
  listFile: (day: CivilDate) => `Thaw list ${day}`,
  labelsTitle: 'Labels for what thaws',
  labelsFile: (day: CivilDate) => `Labels ${day}`,
  partOf: (portions: number, of: number, grams: string) => `${portions}/${of}, ${grams}`,
  labelFoot: (out: string, ready: string, official: string | null, who: string) =>
    `out ${out}, ready ${ready}${official === null ? '' : `, official ${official}`}${who === '' ? '' : `. ${who}`}`,
  back: 'Back to the freezer',
  kind: 'On',
  kinds: { small: 'small labels', plain: 'plain paper' },
  smallNote: { a4: '24 on a sheet, 70 × 37 mm', letter: '30 on a sheet, 2⅝ × 1 in' },
  first: 'first free label',
  firstRange: (most: number) => `1 to ${most}`,
  out: 'out',
  ready: 'ready',
  useBy: 'use by',
  official: (when: string) => `official ${when}`,
  forWhom: 'for',
  what: 'what',
  box: 'done',
  lead: (thaw: number, keep: number) => freezerWords.lead(thaw, keep),
  foot: 'Never on the counter. Refrigerator at 4 °C or colder. What is past its time is thrown away.',
  made: (when: string) => `made ${when}`,
  sheet: (n: number, of: number) => `sheet ${n} of ${of}`,
  from: (clock: string) => `from ${clock}`,
  atTime: (day: CivilDate, clock: string) => `${shortDay(day)} ${clock}`,
  /** On paper, which may hang for longer than a week. */
  dateTime: (day: CivilDate, clock: string) => `${dayOfWeek(day)} ${clock}`,
} as const;
