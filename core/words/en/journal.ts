/** What was done, in words: each entry of the journal from its codes and figures. */
import type { Done } from '../../contract/journal.ts';
import type { OPERATIONS, OperationName } from '../../contract/operations.ts';
import type { NamedFood } from '../../food/food.ts';
import type { WayOut } from '../../freezer/pack.ts';
import type { PuppyState } from '../../litter/litter.ts';
import type { MassUnit } from '../../units/mass.ts';
import type { Ate, WeaningNote } from '../../weaning/eaten.ts';
import { isolated } from '../isolated.ts';
import { massText } from './amounts.ts';
import { foodName } from './food.ts';

const STATES: Record<PuppyState, string> = { litter: 'back in the litter', home: 'gone home', kept: 'kept', died: 'died' };
const EATEN: Record<Ate, string> = { clean: 'cleaned up', left: 'some left', refused: 'refused' };
const WAYS: Record<WayOut, string> = { used: 'used up', thrown: 'thrown away', given: 'given away' };

/** A meal, a stool, a pause, an answer. */
function noteWords(note: WeaningNote): string {
  switch (note.kind) {
    case 'meal':
      return `${note.meal} meal ${EATEN[note.ate]}`;
    case 'stool':
      return `${note.stool} stool`;
    case 'pause':
      return note.paused ? 'weaning paused' : 'weaning goes on';
    case 'answer':
      return note.accepted ? 'suggestion taken' : 'suggestion not taken';
  }
}

function packsWords(packs: number, foods: readonly NamedFood[]): string {
  const names = foods.map((food) => isolated(foodName(food))).join(', ');
  return packs === 1 ? names : `${packs} × ${names}`;
}

/** What an entry was about: names, and what became of them. */
function whoWords(about: Done['about']): string {
  switch (about.of) {
    case 'house':
      return '';
    case 'litter':
      return [isolated(about.dam), ...(about.note === undefined ? [] : [noteWords(about.note)])].join(': ');
    case 'puppies': {
      const names = about.names.map(isolated).join(', ');
      if (about.state !== undefined) return `${names}: ${STATES[about.state]}`;
      return about.note === undefined ? names : `${names}: ${noteWords(about.note)}`;
    }
    case 'dog':
      return isolated(about.name);
    case 'food':
      return isolated(foodName(about.food));
    case 'packs':
      return [packsWords(about.packs, about.foods), ...(about.out === undefined ? [] : [WAYS[about.out]])].join(' ');
    case 'stock':
      return `${about.packs} ${about.packs === 1 ? 'pack' : 'packs'}`;
    case 'person':
      return isolated(about.name);
    case 'text':
      return isolated(about.text);
  }
}

/** One who was erased has no name. */
function buyer(name: string): string {
  return name === '' ? 'a buyer' : name;
}

function retiredWords(about: Done['about']): string {
  if (about.of !== 'food' || about.retired === undefined) return 'Food put away or taken back';
  return about.retired ? 'Food put away' : 'Food in use again';
}

interface Told {
  readonly who: string;
  /** With a blank before it; empty where there is none. */
  readonly weight: string;
  readonly isOfHouse: boolean;
  readonly about: Done['about'];
}

type Command = { [N in OperationName]: (typeof OPERATIONS)[N]['kind'] extends 'command' ? N : never }[OperationName];

/** Each command of the contract: one without a sentence does not compile. */
const SENTENCES: Readonly<Record<Command, (told: Told) => string>> = {
  'litter.begin': ({ who }) => `Litter of ${who} begun`,
  'litter.change': ({ who }) => `Litter of ${who} changed`,
  'litter.remove': ({ who }) => `Litter of ${who} removed`,
  'litter.addPuppy': ({ who, weight }) => `${who} added${weight === '' ? '' : `,${weight}`}`,
  'litter.changePuppy': ({ who }) => `${who} changed`,
  'litter.moveBirths': ({ who }) => `Births of the litter of ${who} moved`,
  'litter.removePuppy': ({ who }) => `${who} removed`,
  'litter.setState': ({ who }) => who,
  'litter.arrange': ({ who }) => `Order of the weigh-in, litter of ${who}`,
  'growth.record': ({ who, weight }) => `${who}${weight}`,
  'growth.recordWeighing': ({ who }) => `Litter of ${who} weighed`,
  'growth.correctWeighing': ({ who }) => `Weights of the litter of ${who} corrected`,
  'growth.correct': ({ who, weight }) => `${who} corrected to${weight}`,
  'growth.withdraw': ({ who, weight }) => `${who}${weight} taken back`,
  'growth.keep': ({ who, weight }) => `${who}${weight} kept as right`,
  'growth.give': ({ who, weight }) => `${who}${weight}, written for a littermate before`,
  'growth.exchange': ({ who }) => `${who}: weights exchanged`,
  'feeding.setRules': () => 'House rules changed',
  'feeding.setLitterRules': ({ who }) => `Rules of the litter of ${who} changed`,
  'food.add': ({ who }) => `Food written down: ${who}`,
  'food.change': ({ who }) => `Food changed: ${who}`,
  'food.retire': ({ who, about }) => `${retiredWords(about)}: ${who}`,
  'food.choose': ({ who, isOfHouse }) => (isOfHouse ? 'Food of the house chosen' : `Food chosen, litter of ${who}`),
  'food.setWeek': ({ who, isOfHouse }) => (isOfHouse ? 'Week of bowls changed' : `Week of bowls changed, litter of ${who}`),
  'food.changeWeek': ({ who, isOfHouse }) => (isOfHouse ? 'Week of bowls changed' : `Week of bowls changed, litter of ${who}`),
  // Earlier programs wrote the whole list, without names.
  'dogs.addGrown': ({ who }) => (who === '' ? 'Grown dogs of the house changed' : `${who}, grown, written down`),
  'dogs.removeGrown': ({ who }) => `${who}, grown, taken out`,
  'weaning.setPlan': ({ who }) => `Weaning of the litter of ${who} set`,
  'weaning.changePlan': ({ who }) => `Weaning of the litter of ${who} changed`,
  'weaning.changeSteps': ({ who }) => `Weaning of the litter of ${who} changed`,
  'weaning.dropPlan': ({ who }) => `Weaning of the litter of ${who} dropped`,
  'weaning.note': ({ who }) => who,
  'weaning.takeBack': ({ who }) => `${who}, taken back`,
  'care.setChip': ({ who }) => `Chip of ${who} written`,
  'care.removeChip': ({ who }) => `Chip of ${who} taken away`,
  'dogs.damBegin': ({ who }) => `${who} written down as a dam`,
  'dogs.damChange': ({ who }) => `${who}, the dam, changed`,
  'dogs.damRemove': ({ who }) => `${who}, the dam, removed`,
  'dogs.damWeigh': ({ who, weight }) => `${who}, the dam,${weight}`,
  'dogs.damWithdraw': ({ who, weight }) => `${who}, the dam,${weight} taken back`,
  'freezer.add': ({ who, weight }) => `${who} put in,${weight}`,
  'freezer.changePacks': ({ who }) => `Packs changed: ${who}`,
  // Earlier programs wrote the number alone.
  'freezer.count': ({ who, about }) => `Freezer counted: ${about.of === 'text' ? `${who} packs` : who}`,
  'freezer.takeOut': ({ who, weight }) => `${who},${weight}`,
  'freezer.thaw': ({ who, weight }) => `${who} taken out to thaw,${weight}`,
  'freezer.endThaw': ({ who }) => who,
  'freezer.addDog': ({ who, weight }) => `${who} eats from the freezer,${weight} a day`,
  'freezer.changeDog': ({ who, weight }) => `${who} eats from the freezer,${weight} a day`,
  'freezer.removeDog': ({ who }) => `${who} no longer eats from the freezer`,
  'freezer.addStarter': ({ who, weight }) => `Starter pack for ${buyer(who)},${weight}`,
  'freezer.changeStarter': ({ who, weight }) => `Starter pack for ${buyer(who)},${weight}`,
  'freezer.removeStarter': ({ who }) => `No starter pack for ${buyer(who)}`,
  'freezer.setSettings': () => 'Settings of the freezer changed',
  'homing.handOver': ({ who }) => `Plan of ${who} handed over`,
  'people.erase': () => 'Person erased',
  'people.setHouse': () => 'Details of the house changed',
  'records.import': ({ who }) => `Weights of ${who}’s litter taken in from a table`,
  'records.takeIn': () => 'A whole house taken in',
  'records.undo': () => 'Undone',
  'records.redo': () => 'Done again',
  'records.addDemo': () => 'Invented litters added',
  'records.removeDemo': () => 'Invented litters removed',
};

/** What one entry of the journal did: "Elder 2 365 g", "Litter of Hazel begun". An entry of a newer program gets its operation's name. */
export function doneSentence({ operation, about, grams }: Pick<Done, 'operation' | 'about' | 'grams'>, unit: MassUnit): string {
  const who = whoWords(about);
  const weight = grams === null ? '' : ` ${massText(grams, unit)}`;
  const isOfHouse = about.of === 'house' || (about.of === 'text' && about.text === '');
  const sentence = Object.hasOwn(SENTENCES, operation) ? SENTENCES[operation as Command] : null;
  return sentence === null ? `${operation} ${who}${weight}`.trim() : sentence({ who, weight, isOfHouse, about });
}
