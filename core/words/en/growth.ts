/** Sentences of weigh-in, growth and puppy pages. What a weight means is said by `growthFindingWords`; here is what stands around it. */

import { DAY_MINUTES } from '../../calendar/durations.ts';
import type { Session } from '../../litter/litter.ts';
import { GRAMS_PER_POUND, isMetric, type MassUnit } from '../../units/mass.ts';
import { fixed, numberWord } from './figures.ts';

const percent = (standing: number) => Math.round((Math.exp(standing) - 1) * 100);

/** "9 % under the middle", "4 % over the middle", "at the middle". */
export function standingWords(standing: number): string {
  const p = percent(standing);
  if (p === 0) return 'at the middle';
  return p < 0 ? `${-p} % under the middle` : `${p} % over the middle`;
}

/** "6 % under", "2 % over", "level". */
function shortStanding(standing: number): string {
  const p = percent(standing);
  if (p === 0) return 'level';
  return p < 0 ? `${-p} % under` : `${p} % over`;
}

/** "–6 %" for columns. */
export function standingFigure(standing: number): string {
  const p = percent(standing);
  return `${p > 0 ? '+' : p < 0 ? '–' : ''}${Math.abs(p)} %`;
}

/** "+63", "–12", "0" */
export function signed(figure: string, value: number): string {
  if (Math.round(value * 10) === 0) return figure.replace('-', '');
  return `${value > 0 ? '+' : '–'}${figure.replace('-', '')}`;
}

/** "a day and 5 minutes", "11 hours", "2 days" */
export function span(ms: number): string {
  const minutes = Math.round(ms / 60_000);
  const days = Math.floor(minutes / DAY_MINUTES);
  const rest = minutes - days * DAY_MINUTES;
  const hours = Math.floor(rest / 60);
  const small = hours > 0 ? count(hours, 'hour') : rest > 0 ? count(rest, 'minute') : '';
  if (days === 0) return small === '' ? 'no time' : small;
  const big = days === 1 ? 'a day' : `${days} days`;
  return small === '' ? big : `${big} and ${small}`;
}

function count(n: number, word: string): string {
  return `${n} ${word}${n === 1 ? '' : 's'}`;
}

export const growthWords = {
  weighIn: 'Weigh-in',
  session: { birth: 'at birth', morning: 'morning', evening: 'evening' } satisfies Record<Session, string>,
  weighed: (of: number) => `of ${of} weighed`,
  collar: 'collar',
  puppy: 'puppy',
  before: (unit: string) => `before, ${unit}`,
  yesterday: (unit: string) => `yesterday, ${unit}`,
  now: (unit: string) => `now, ${unit}`,
  today: (unit: string) => `today, ${unit}`,
  gain: 'gain',
  remark: 'remark',
  dogOrBitch: { dog: 'dog', bitch: 'bitch', unseen: 'sex not seen yet' },
  expected: (mass: string) => `expected about ${mass}`,
  firstWeight: 'first weight of this puppy',
  next: (name: string) => `next: ${name}`,
  lastOne: 'the last one',
  keep: (mass: string) => `keep ${mass}`,
  isOf: (name: string, mass: string) => `${mass} is ${name}’s`,
  heldOut: 'in question',
  notThere: 'Nobody to weigh yet.',
  notThereMore: 'Write down the puppies first.',
  toPuppies: 'To the puppies',
  allWeighed: (n: number) => (n === 1 ? 'Weighed.' : `All ${numberWord(n)} weighed.`),
  toToday: 'To Today',
  weightOf: (name: string) => `Weight of ${name}`,
  otherTime: 'another day or time',
  day: 'day',
  when: 'time of day',
  order: 'Alt with up or down changes the order.',
  goThere: 'Go',
  notNow: 'Not the weigh-in of now.',
  dayBefore: 'a day back',
  backToNow: 'back to now',
  noSuchDay: 'Write the day first.',
  halfDone: (which: string, done: number, of: number) => `${which}, is half done: ${done} of ${of} weighed.`,
  backToHalfDone: 'Go on with it',
  notWritten: 'not written yet',
  refusedWeight: 'could not be written; type it again or take it back with Ctrl Z',
  onItsWay: 'being written',
  notWrittenCount: (n: number) => (n === 1 ? 'One weight is not written yet.' : `${n} weights are not written yet.`),
  notWrittenMore: 'They stay here and are tried again in order.',
  startedAgain:
    'Whelpside was started again and does not know this window yet. Open the address that it printed last, in this window or beside it, and they are written.',
  writeAgain: 'Try now',
  allTyped: (n: number, missing: number) => `All ${n} weighed; ${missing} not written yet.`,
  later: (mass: string, when: string) => `Later: ${mass}, ${when}.`,
  cannotBeFuture: 'That day has not come yet.',
  beforeBirth: 'The litter was not born yet on that day.',
  pickUp: (name: string) => `Take ${name} in hand`,
  mendWeight: (name: string, mass: string) => `${name}, ${mass}: take in hand again`,
  /** "+41 g since yesterday 07:10" */
  since: (gain: string, when: string) => `${gain} since ${when}`,
  clockBehind: (today: string, born: string) =>
    `The clock of this computer says ${today}, and the litter was born on ${born}. Set the clock first: every weight takes its day from it.`,
  againstMiddle: (own: string, middle: string) => `${own} against ${middle}, the middle of the littermates.`,
  explainGain: (now: string, nowWhen: string, then: string, thenWhen: string, apart: string) =>
    `${now} ${nowWhen} less ${then} ${thenWhen}, ${apart} apart.`,
  wasStanding: (now: number, before: number | null, day: string | null) =>
    before === null || day === null ? shortStanding(now) : `${shortStanding(now)}; ${shortStanding(before)} on ${day}`,

  lookAt: (name: string) => `Look at ${name}`,
  lookAtLitter: (dam: string) => `Look at ${dam}`,
  weigh: (name: string) => `Weigh ${name}`,
  weighAgainBy: (clock: string, tomorrow: boolean) => `Weigh again by ${clock}${tomorrow ? ' tomorrow' : ''}.`,
  weighAgainSince: (due: string) => `Weighing again is overdue since ${due}.`,
  startWeighIn: 'Weigh in',
  middleOfLitter: 'middle of the litter',
  dayOfLife: (litter: string, day: number) => `${litter}, day ${day}.`,
  everyoneWeighed: (clock: string) => `Everyone weighed at ${clock}.`,
  weighedSoFar: (n: number, of: number) => `${n} of ${of} weighed this time.`,
  nobodyWeighed: (session: string) => `Not weighed yet this ${session}.`,
  everyoneSteady: 'Everyone is steady.',
  othersSteady: (n: number) => (n === 1 ? 'The other one is steady.' : `The other ${numberWord(n)} are steady.`),
  noWeights: 'No weights yet. The drift line shows who keeps up once the puppies have been weighed.',
  alone: 'The drift line needs littermates. With one puppy weighed, go by its gain.',
  /** In place of a level, while one cannot be said. */
  known: { none: 'not weighed yet', once: 'weighed once' },
  weighedOnce: 'Weighed once. Who keeps up shows from the second weight on.',
  question: 'A weight is in question',
  questionMore: (name: string, mass: string) => `${name}: ${mass} is kept and held out until you say whether it is right.`,
  answerIt: 'Answer it',
  findings: 'About the readings',
  vet: (name: string, phone: string) => `Your vet${name === '' ? '' : `, ${name}`}: ${phone}`,
  vetUnknown: 'Your vet’s number is not written yet.',
  writeVet: 'Write it down',
  notDiagnosis: 'This supports your judgement. It does not diagnose.',

  growth: 'Growth',
  growthOf: (litter: string) => `${litter}, everyone by day`,
  pickOut: 'pick out',
  views: { notes: 'Notes and facts', weight: 'Weight', gain: 'Daily gain', standing: 'Standing' },
  dayColumn: 'day',
  weightColumn: (unit: string) => unit,
  gainColumn: (unit: string) => `gain, ${unit}`,
  perDay: 'a day',
  percentADay: '% a day',
  standingColumn: 'standing',
  lineColumn: (unit: string) => `your line, ${unit}`,
  levelColumn: 'level',
  wholeRecord: 'whole record',
  lastDays: 'the last days',
  onlyLast: 'Earlier days and struck-out readings:',
  replaced: 'replaced',
  takenBack: 'taken back',
  bornAt: (mass: string) => `born at ${mass}`,
  nthOf: (n: number, of: number) => `Puppy ${n} of ${of}.`,
  writtenDown: 'Written down',
  facts: 'Facts',
  markings: 'markings',
  born: 'born',
  grown: 'grown, about',
  grownFrom: {
    breeder: 'as you wrote it',
    'other-sex': 'reckoned from what you wrote for the other sex',
    class: 'middle of the size class; a synthesis',
  },
  /** Kilograms, or pounds for who weighs in pounds or ounces. */
  grownWeight: (kg: number, unit: MassUnit) => {
    const [figure, of] = isMetric(unit) ? [kg, 'kg'] : [(1000 * kg) / GRAMS_PER_POUND, 'lb'];
    return `${fixed(figure, figure < 10 ? 1 : 0)}\u00a0${of}`;
  },
  grownUnknown: 'not written; the forecast stays short',
  state: 'where',
  states: { litter: 'in the litter', home: 'gone home', kept: 'kept', died: 'died' },
  plan: 'plan',
  previewPlan: 'Preview the go-home plan',
  changeFacts: 'Change the facts',
  ladder: 'Meal ladder',
  ladderNote: 'A forecast from the last weight; it is drawn again at each weigh-in.',
  ladderNone: 'The ladder is drawn once there is a weight and an expected grown weight or size class.',
  atOwnPace: (mass: string) => `One day after its last weight it should weigh about ${mass}.`,
  forecast: 'Forecast',
  source: { keyboard: 'typed', scale: 'from the scale', file: 'from a file', demo: 'invented' },
  noReadings: 'No weights are written yet.',
  goWeigh: 'Weigh in',
  livedFor: (age: string) => `lived ${age}`,
  gone: 'No such puppy.',
};

/** A weight mended where it is seen. */
export const mendWords = {
  open: 'correct',
  openFor: (figure: string, when: string) => `Correct ${figure}, ${when}`,
  title: (mass: string) => `Correct ${mass}`,
  weight: 'weight',
  whose: 'puppy',
  write: 'Write it so',
  strikeOut: 'Strike it out',
  leave: 'Leave it',
  noWeight: 'Write the weight, or strike it out.',
  before: 'Before:',
};

export const answerWords = {
  right: 'It is right',
  takeBack: 'Take it back',
  exchange: 'exchange',
  areRight: 'they are right',
  exchangeThem: 'Exchange them',
  theyAreRight: 'They are right',
  held: 'in question, held out',
};
