/**
 * The one list of operations. Both hosts carry exactly this and nothing else: name, kind, input, output, what changes.
 * A `query` changes nothing. A `command` changes facts, in one transaction with one journal entry unless it says
 * otherwise. An `act` does something outside the facts (a backup, a PDF).
 */
import { z } from 'zod';
import { damFieldsSchema, damSchema, damWeightFieldsSchema } from '../feeding/dam.ts';
import { weaningEventSchema } from '../feeding/eaten.ts';
import { foodFieldsSchema, storedFoodSchema } from '../feeding/own-food.ts';
import { feedingSchema, grownDogSchema, weekSchema } from '../feeding/rotation.ts';
import { houseRulesSchema, litterRulesSchema, rulesVersionSchema } from '../feeding/rules.ts';
import { weaningPlanSchema } from '../feeding/weaning-plan.ts';
import { demandSchema } from '../freezer/demand.ts';
import {
  dogFieldsSchema,
  dogSchema,
  freezerSettingsSchema,
  packFieldsSchema,
  packSchema,
  starterFieldsSchema,
  starterSchema,
  THAW_WAYS,
  thawSchema,
  WAYS_OUT,
} from '../freezer/pack.ts';
import { MOST_LITTERS } from '../growth/line/earlier.ts';
import { planDocumentSchema } from '../homing/document.ts';
import {
  dateSchema,
  idSchema,
  instantSchema,
  litterFieldsSchema,
  litterSchema,
  localTimeSchema,
  longText,
  PUPPY_STATES,
  puppyFieldsSchema,
  puppySchema,
  readingFieldsSchema,
  readingSchema,
} from '../litter/litter.ts';
import { houseSchema } from '../records/house.ts';
import { TAGS, type Tag } from './result.ts';

interface Operation<I extends z.ZodType, O extends z.ZodType> {
  readonly kind: 'query' | 'command' | 'act';
  readonly input: I;
  readonly output: O;
  /** What a command or act may change; a query: what it depends on. */
  readonly tags: readonly Tag[];
  /** Bytes of the largest input, where it may be more than a host usually takes. */
  readonly largest?: number;
}

function op<I extends z.ZodType, O extends z.ZodType>(o: Operation<I, O>): Operation<I, O> {
  return o;
}

const nothing = z.strictObject({});
const litterWithPuppies = z.strictObject({ litter: litterSchema, puppies: z.array(puppySchema) });

/** As much of a reading as a line needs: there are thousands of them. */
const lineReading = readingSchema.pick({ puppyId: true, instant: true, grams: true });

const birthWeight = readingFieldsSchema.pick({ grams: true, typed: true, unit: true, source: true });

/** What was done, as data; `words` makes the sentence. `who` is the puppy's or dam's name at that time. */
export const doneSchema = z.strictObject({
  id: z.number().int(),
  instant: instantSchema,
  operation: z.string(),
  who: z.string(),
  grams: z.number().nullable(),
  litterId: idSchema.nullable(),
  puppyId: idSchema.nullable(),
  undone: z.boolean(),
});
export type Done = z.infer<typeof doneSchema>;

export const keptPlanSchema = z.strictObject({
  id: idSchema,
  puppyId: idSchema,
  handedOver: dateSchema,
  recordedInstant: instantSchema,
  title: z.string(),
});
export type KeptPlan = z.infer<typeof keptPlanSchema>;

const paperOf = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('puppy'), puppyId: idSchema, on: dateSchema }),
  z.strictObject({ kind: z.literal('kept'), planId: idSchema }),
]);
export type PaperOf = z.infer<typeof paperOf>;

const backupSchema = z.strictObject({
  file: z.string(),
  instant: instantSchema,
  kind: z.enum(['daily', 'before-migration', 'before-restore', 'by-hand']),
  bytes: z.number().int(),
  checked: z.boolean(),
});
export type Backup = z.infer<typeof backupSchema>;

/** How much a data file holds; what was taken back does not count. */
const contentsSchema = z.strictObject({
  litters: z.number().int(),
  puppies: z.number().int(),
  readings: z.number().int(),
  /** When the latest of its weights was written. */
  lastReading: instantSchema.nullable(),
});
export type Contents = z.infer<typeof contentsSchema>;

/** What is wrong with the data file, and the ways on. */
const rescueSchema = z.strictObject({
  /** `damaged` not whole, or no data file at all · `changed` whole, but not as the program left it · `lost` only its log is there. */
  problem: z.enum(['damaged', 'changed', 'lost']),
  file: z.string(),
  bytes: z.number().int(),
  /** What can still be read of it; null when nothing can. */
  readable: contentsSchema.nullable(),
  /**
   * Newest first. Every one was read through: `checked` says whether it is whole; `contents` is null when it is not.
   * `missing` counts the weights that can be read in the data file and are not in the copy; null when none can be counted.
   */
  backups: z.array(
    z.strictObject({ backup: backupSchema, contents: contentsSchema.nullable(), missing: z.number().int().nullable() }),
  ),
  canChooseFolder: z.boolean(),
});
export type Rescue = z.infer<typeof rescueSchema>;

/** The absolute path of a folder on this computer, as a person types or chooses it. */
const folderSchema = longText.min(1).max(1000);

/** Weights out of a table, into a litter that is there or a new one. New puppies are named by a key of the caller's. */
const importSchema = z.strictObject({
  into: z.discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('litter'), litterId: idSchema }),
    z.strictObject({ kind: z.literal('new'), litter: litterFieldsSchema }),
  ]),
  puppies: z.array(z.strictObject({ key: z.string().min(1).max(600), fields: puppyFieldsSchema })).max(16),
  /** `puppy` is an id or the key of a new one. */
  readings: z
    .array(z.strictObject({ puppy: z.string().min(1).max(600), reading: readingFieldsSchema }))
    .min(1)
    .max(10_000),
});

/** `weights`: one table to read in a spreadsheet. `csv`: a file for each table. `file`: a checked copy of the data file. `person`: what is kept of the breeder and the vet. */
export const EXPORTS = ['weights', 'csv', 'xlsx', 'json', 'file', 'person'] as const;
export type ExportKind = (typeof EXPORTS)[number];

export const OPERATIONS = {
  'litter.all': op({
    kind: 'query',
    input: nothing,
    output: z.strictObject({ litters: z.array(litterWithPuppies) }),
    tags: ['litters'],
  }),
  'litter.begin': op({
    kind: 'command',
    input: litterFieldsSchema,
    output: z.strictObject({ litter: litterSchema }),
    tags: ['litters', 'records'],
  }),
  'litter.change': op({
    kind: 'command',
    input: z.strictObject({ litterId: idSchema, fields: litterFieldsSchema }),
    output: z.strictObject({ litter: litterSchema }),
    tags: ['litters', 'records'],
  }),
  /** Refused once a puppy of the litter has been weighed after birth or handed a plan. */
  'litter.remove': op({
    kind: 'command',
    input: z.strictObject({ litterId: idSchema }),
    output: nothing,
    tags: ['litters', 'readings', 'records'],
  }),
  'litter.addPuppy': op({
    kind: 'command',
    input: z.strictObject({ litterId: idSchema, fields: puppyFieldsSchema, birthWeight: birthWeight.nullable() }),
    output: z.strictObject({ puppy: puppySchema }),
    tags: ['litters', 'readings', 'records'],
  }),
  'litter.changePuppy': op({
    kind: 'command',
    input: z.strictObject({ puppyId: idSchema, fields: puppyFieldsSchema }),
    output: z.strictObject({ puppy: puppySchema }),
    tags: ['litters', 'records'],
  }),
  /** Refused once the puppy has been weighed after birth or handed a plan. */
  'litter.removePuppy': op({
    kind: 'command',
    input: z.strictObject({ puppyId: idSchema }),
    output: nothing,
    tags: ['litters', 'readings', 'records'],
  }),
  'litter.setState': op({
    kind: 'command',
    input: z.strictObject({ puppyId: idSchema, state: z.enum(PUPPY_STATES), on: dateSchema.nullable() }),
    output: z.strictObject({ puppy: puppySchema }),
    tags: ['litters', 'records'],
  }),
  /** Order of the weigh-in: every puppy of the litter once. */
  'litter.arrange': op({
    kind: 'command',
    input: z.strictObject({ litterId: idSchema, puppyIds: z.array(idSchema).min(1).max(30) }),
    output: nothing,
    tags: ['litters', 'records'],
  }),

  'growth.readings': op({
    kind: 'query',
    input: z.strictObject({ litterId: idSchema }),
    output: z.strictObject({ readings: z.array(readingSchema) }),
    tags: ['readings'],
  }),
  /**
   * Earlier litters of the same breed as written, in any case and spacing; the youngest first, 24 at the most, and their weights
   * of the first eight weeks that stand and are not in question. None when the breed is not written; invented ones only for an
   * invented litter.
   */
  'growth.line': op({
    kind: 'query',
    input: z.strictObject({ litterId: idSchema }),
    output: z.strictObject({
      litters: z.array(z.strictObject({ ...litterWithPuppies.shape, readings: z.array(lineReading) })).max(MOST_LITTERS),
    }),
    tags: ['litters', 'readings'],
  }),
  'growth.record': op({
    kind: 'command',
    input: z.strictObject({ puppyId: idSchema, reading: readingFieldsSchema }),
    output: z.strictObject({ reading: readingSchema }),
    tags: ['readings', 'records'],
  }),
  /** A new reading takes the old one's place; both are kept. */
  'growth.correct': op({
    kind: 'command',
    input: z.strictObject({ readingId: idSchema, reading: readingFieldsSchema }),
    output: z.strictObject({ reading: readingSchema }),
    tags: ['readings', 'records'],
  }),
  'growth.withdraw': op({
    kind: 'command',
    input: z.strictObject({ readingId: idSchema }),
    output: z.strictObject({ reading: readingSchema }),
    tags: ['readings', 'records'],
  }),
  /** The person says that a doubtful reading is right: not held any more, and `kept`. */
  'growth.keep': op({
    kind: 'command',
    input: z.strictObject({ readingId: idSchema }),
    output: z.strictObject({ reading: readingSchema }),
    tags: ['readings', 'records'],
  }),
  /** Two puppies' weights changed places: each reading is replaced by one with the other's weight, in one entry. */
  'growth.exchange': op({
    kind: 'command',
    input: z.strictObject({ readingId: idSchema, withReadingId: idSchema }),
    output: z.strictObject({ readings: z.array(readingSchema).length(2) }),
    tags: ['readings', 'records'],
  }),

  'feeding.rules': op({
    kind: 'query',
    input: nothing,
    /** Latest `from` first; the defaults of the program are the last. What litters have of their own stands beside. */
    output: z.strictObject({ versions: z.array(rulesVersionSchema).min(1), ofLitters: z.array(litterRulesSchema) }),
    tags: ['rules'],
  }),
  /** A new version in force from a day; a version of the same day is replaced. */
  'feeding.setRules': op({
    kind: 'command',
    input: z.strictObject({ from: dateSchema, rules: houseRulesSchema }),
    output: z.strictObject({ version: rulesVersionSchema }),
    tags: ['rules', 'records'],
  }),
  /** Rules of one litter from a day on; null rules are the house's again. A version of the same day is replaced. */
  'feeding.setLitterRules': op({
    kind: 'command',
    input: z.strictObject({ litterId: idSchema, from: dateSchema, rules: houseRulesSchema.nullable() }),
    output: z.strictObject({ version: litterRulesSchema }),
    tags: ['rules', 'records'],
  }),
  /** Her own foods, retired ones too. Those shipped with the program are in `core/feeding/book.ts`. */
  'feeding.foods': op({
    kind: 'query',
    input: nothing,
    output: z.strictObject({ foods: z.array(storedFoodSchema) }),
    tags: ['foods'],
  }),
  /** A new food with a null id, else the food changed. What can't be (`foodChecks` with `stop`) is refused. */
  'feeding.setFood': op({
    kind: 'command',
    input: z.strictObject({ foodId: idSchema.nullable(), fields: foodFieldsSchema }),
    output: z.strictObject({ food: storedFoodSchema }),
    tags: ['foods', 'records'],
  }),
  /** A retired food is no longer offered; where it is used it stays. */
  'feeding.retireFood': op({
    kind: 'command',
    input: z.strictObject({ foodId: idSchema, retired: z.boolean() }),
    output: z.strictObject({ food: storedFoodSchema }),
    tags: ['foods', 'records'],
  }),
  /** What the house and the litters eat: only those for which something was written down. */
  'feeding.rotations': op({
    kind: 'query',
    input: nothing,
    output: z.strictObject({ feedings: z.array(feedingSchema) }),
    tags: ['foods', 'litters'],
  }),
  /** The food that a litter (or the house, with null) is fed; a null food is the house's, or the generic mix. */
  'feeding.chooseFood': op({
    kind: 'command',
    input: z.strictObject({ litterId: idSchema.nullable(), foodId: idSchema.nullable() }),
    output: z.strictObject({ feeding: feedingSchema }),
    tags: ['foods', 'records'],
  }),
  /** The week of bowls of a litter or of the house; null takes it away. */
  'feeding.setRotation': op({
    kind: 'command',
    input: z.strictObject({ litterId: idSchema.nullable(), week: weekSchema.nullable() }),
    output: z.strictObject({ feeding: feedingSchema }),
    tags: ['foods', 'records'],
  }),
  /** The grown dogs of the house; null when there are none. */
  'feeding.setGrownDogs': op({
    kind: 'command',
    input: z.strictObject({ dogs: z.array(grownDogSchema).min(1).max(24).nullable() }),
    output: z.strictObject({ feeding: feedingSchema }),
    tags: ['foods', 'records'],
  }),

  /** The plan of weaning, null before there is one, and what was noted: oldest first. */
  'feeding.weaning': op({
    kind: 'query',
    input: z.strictObject({ litterId: idSchema }),
    output: z.strictObject({ plan: weaningPlanSchema.nullable(), events: z.array(weaningEventSchema) }),
    tags: ['weaning', 'litters'],
  }),
  'feeding.weaningSet': op({
    kind: 'command',
    input: z.strictObject({ litterId: idSchema, plan: weaningPlanSchema }),
    output: z.strictObject({ plan: weaningPlanSchema }),
    tags: ['weaning', 'records'],
  }),
  /** Takes the plan away; what was noted stays. */
  'feeding.weaningDrop': op({
    kind: 'command',
    input: z.strictObject({ litterId: idSchema }),
    output: nothing,
    tags: ['weaning', 'records'],
  }),
  /** A meal eaten, left or refused; a stool; a pause; an answer to a suggestion. `day` is the day that it is about. */
  'feeding.weaningNote': op({
    kind: 'command',
    input: weaningEventSchema.omit({ id: true }),
    output: z.strictObject({ event: weaningEventSchema }),
    tags: ['weaning', 'records'],
  }),
  'feeding.weaningTakeBack': op({
    kind: 'command',
    input: z.strictObject({ eventId: idSchema }),
    output: nothing,
    tags: ['weaning', 'records'],
  }),
  /** Writes the prep sheet of a day into the papers folder and answers its name; refused when nothing is fed from bowls on it. */
  'feeding.prepPdf': op({
    kind: 'act',
    input: z.strictObject({ litterId: idSchema, day: dateSchema, paper: z.enum(['a4', 'letter']) }),
    output: z.strictObject({ file: z.string(), folder: z.string() }),
    tags: [],
  }),
  /** Dams written down, the latest first. */
  'feeding.dams': op({
    kind: 'query',
    input: nothing,
    output: z.strictObject({ dams: z.array(damSchema) }),
    tags: ['dams', 'litters'],
  }),
  /** Refused (`conflict`) for a litter that has its dam. */
  'feeding.damBegin': op({
    kind: 'command',
    input: damFieldsSchema,
    output: z.strictObject({ dam: damSchema }),
    tags: ['dams', 'records'],
  }),
  'feeding.damChange': op({
    kind: 'command',
    input: z.strictObject({ damId: idSchema, fields: damFieldsSchema }),
    output: z.strictObject({ dam: damSchema }),
    tags: ['dams', 'records'],
  }),
  'feeding.damRemove': op({
    kind: 'command',
    input: z.strictObject({ damId: idSchema }),
    output: nothing,
    tags: ['dams', 'records'],
  }),
  'feeding.damWeigh': op({
    kind: 'command',
    input: z.strictObject({ damId: idSchema, weight: damWeightFieldsSchema }),
    output: z.strictObject({ weightId: idSchema }),
    tags: ['dams', 'records'],
  }),
  'feeding.damWithdraw': op({
    kind: 'command',
    input: z.strictObject({ weightId: idSchema }),
    output: nothing,
    tags: ['dams', 'records'],
  }),

  /** What is in the freezer, what is thawing, who eats from it. Packs gone before `since` are left out, but for the last of each food. */
  'freezer.stock': op({
    kind: 'query',
    input: z.strictObject({ since: dateSchema }),
    output: z.strictObject({
      packs: z.array(packSchema),
      thaws: z.array(thawSchema),
      dogs: z.array(dogSchema),
      starters: z.array(starterSchema),
      settings: freezerSettingsSchema,
    }),
    tags: ['freezer'],
  }),
  /** What everyone eats from day to day, both included, at most 400 days: the litters by their weights and forecasts, and the dogs of the freezer. */
  'freezer.demand': op({
    kind: 'query',
    input: z.strictObject({ from: dateSchema, until: dateSchema }),
    output: z.strictObject({ demand: z.array(demandSchema) }),
    tags: ['freezer', 'litters', 'readings', 'rules', 'foods', 'house', 'weaning', 'dams'],
  }),
  /** A delivery: so many packs alike. */
  'freezer.add': op({
    kind: 'command',
    input: z.strictObject({ count: z.number().int().min(1).max(200), pack: packFieldsSchema }),
    output: z.strictObject({ packs: z.array(packSchema) }),
    tags: ['freezer', 'records'],
  }),
  'freezer.changePacks': op({
    kind: 'command',
    input: z.strictObject({
      packIds: z.array(idSchema).min(1).max(200),
      fields: packFieldsSchema.pick({ frozenOn: true, bestBefore: true, price: true, place: true }),
    }),
    output: nothing,
    tags: ['freezer', 'records'],
  }),
  /** Stock-taking: of each group of packs, how many are really there. Those that lack were used, the oldest first; more are added like the newest. */
  'freezer.count': op({
    kind: 'command',
    input: z.strictObject({
      on: dateSchema,
      counts: z
        .array(z.strictObject({ packIds: z.array(idSchema).min(1).max(200), there: z.number().int().min(0).max(500) }))
        .min(1)
        .max(100),
    }),
    output: nothing,
    tags: ['freezer', 'records'],
  }),
  /** What is left of the packs leaves the freezer without the plan. */
  'freezer.takeOut': op({
    kind: 'command',
    input: z.strictObject({ packIds: z.array(idSchema).min(1).max(200), way: z.enum(WAYS_OUT), on: dateSchema }),
    output: nothing,
    tags: ['freezer', 'records'],
  }),
  /** Portions taken out to thaw: their clock starts. On the counter it can only be written down once it has happened (`refused` before). */
  'freezer.thaw': op({
    kind: 'command',
    input: z.strictObject({
      takes: z
        .array(z.strictObject({ packId: idSchema, portions: z.number().int().min(1).max(24) }))
        .min(1)
        .max(100),
      at: localTimeSchema,
      instant: instantSchema,
      way: z.enum(THAW_WAYS),
    }),
    output: z.strictObject({ thaws: z.array(thawSchema) }),
    tags: ['freezer', 'records'],
  }),
  /** What was thawed is used up, or what is left of it was thrown away. */
  'freezer.endThaw': op({
    kind: 'command',
    input: z.strictObject({
      thawIds: z.array(idSchema).min(1).max(100),
      ended: z.enum(['used', 'thrown']),
      at: localTimeSchema,
      instant: instantSchema,
    }),
    output: nothing,
    tags: ['freezer', 'records'],
  }),
  /** A new dog with a null id, else the dog changed. */
  'freezer.setDog': op({
    kind: 'command',
    input: z.strictObject({ dogId: idSchema.nullable(), fields: dogFieldsSchema }),
    output: z.strictObject({ dog: dogSchema }),
    tags: ['freezer', 'records'],
  }),
  'freezer.removeDog': op({
    kind: 'command',
    input: z.strictObject({ dogId: idSchema }),
    output: nothing,
    tags: ['freezer', 'records'],
  }),
  'freezer.setStarter': op({
    kind: 'command',
    input: z.strictObject({ starterId: idSchema.nullable(), fields: starterFieldsSchema }),
    output: z.strictObject({ starter: starterSchema }),
    tags: ['freezer', 'records'],
  }),
  'freezer.removeStarter': op({
    kind: 'command',
    input: z.strictObject({ starterId: idSchema }),
    output: nothing,
    tags: ['freezer', 'records'],
  }),
  'freezer.setSettings': op({
    kind: 'command',
    input: z.strictObject({ settings: freezerSettingsSchema }),
    output: nothing,
    tags: ['freezer', 'records'],
  }),

  'homing.plan': op({
    kind: 'query',
    input: z.strictObject({ puppyId: idSchema, on: dateSchema }),
    output: z.strictObject({ document: planDocumentSchema }),
    tags: ['litters', 'readings', 'rules', 'foods', 'house'],
  }),
  /** Keeps the plan of that day as it is; with `leaves` the puppy is marked gone home that day in the same entry. */
  'homing.handOver': op({
    kind: 'command',
    input: z.strictObject({ puppyId: idSchema, on: dateSchema, leaves: z.boolean() }),
    output: z.strictObject({ plan: keptPlanSchema }),
    tags: ['plans', 'litters', 'records'],
  }),
  'homing.kept': op({
    kind: 'query',
    input: z.strictObject({ litterId: idSchema }),
    output: z.strictObject({ plans: z.array(keptPlanSchema) }),
    tags: ['plans'],
  }),
  'homing.keptDocument': op({
    kind: 'query',
    input: z.strictObject({ planId: idSchema }),
    output: z.strictObject({ document: planDocumentSchema }),
    tags: ['plans'],
  }),
  /** Writes a PDF into the papers folder and answers its name. */
  'homing.savePdf': op({
    kind: 'act',
    input: z.strictObject({ of: paperOf, paper: z.enum(['a4', 'letter']) }),
    output: z.strictObject({ file: z.string(), folder: z.string() }),
    tags: [],
  }),
  'homing.paperFile': op({
    kind: 'query',
    input: z.strictObject({ file: z.string().max(255) }),
    output: z.strictObject({ base64: z.string() }),
    tags: [],
  }),

  'records.house': op({ kind: 'query', input: nothing, output: z.strictObject({ house: houseSchema }), tags: ['house'] }),
  'records.setHouse': op({
    kind: 'command',
    input: z.strictObject({ house: houseSchema }),
    output: nothing,
    tags: ['house', 'records'],
  }),
  'records.status': op({
    kind: 'query',
    input: nothing,
    output: z.strictObject({
      version: z.string(),
      file: z.string(),
      bytes: z.number().int(),
      demo: z.boolean(),
      backups: z.array(backupSchema),
      papersFolder: z.string(),
      canUndo: doneSchema.nullable(),
      canRedo: doneSchema.nullable(),
      /** Whether the host can ask for a folder with a dialog. */
      canChooseFolder: z.boolean(),
    }),
    tags: ['records'],
  }),
  'records.done': op({
    kind: 'query',
    input: z.strictObject({ most: z.number().int().min(1).max(500) }),
    output: z.strictObject({ done: z.array(doneSchema) }),
    tags: ['records'],
  }),
  'records.undo': op({
    kind: 'command',
    input: nothing,
    output: z.strictObject({ done: doneSchema }),
    tags: ['litters', 'readings', 'rules', 'foods', 'house', 'plans', 'weaning', 'dams', 'freezer', 'records'],
  }),
  'records.redo': op({
    kind: 'command',
    input: nothing,
    output: z.strictObject({ done: doneSchema }),
    tags: ['litters', 'readings', 'rules', 'foods', 'house', 'plans', 'weaning', 'dams', 'freezer', 'records'],
  }),
  'records.backUp': op({ kind: 'act', input: nothing, output: z.strictObject({ backup: backupSchema }), tags: ['records'] }),
  /** A checked copy in a folder that is there: a stick, another disk. */
  'records.backUpTo': op({
    kind: 'act',
    input: z.strictObject({ folder: folderSchema }),
    output: z.strictObject({ backup: backupSchema }),
    tags: [],
  }),
  'records.backupsIn': op({
    kind: 'query',
    input: z.strictObject({ folder: folderSchema }),
    output: z.strictObject({ backups: z.array(backupSchema) }),
    tags: [],
  }),
  /** Asks for a folder; null when she chose none. Refused where the host has no dialog. */
  'records.chooseFolder': op({
    kind: 'act',
    input: nothing,
    output: z.strictObject({ folder: folderSchema.nullable() }),
    tags: [],
  }),
  /**
   * Goes back to a copy, of the data folder or (with `folder`) of another. What stood there is kept: as a copy, or beside
   * the data file when it is damaged. `kept` is its name.
   */
  'records.restore': op({
    kind: 'act',
    input: z.strictObject({ folder: folderSchema.nullable(), file: z.string().max(255) }),
    output: z.strictObject({ kept: z.string(), contents: contentsSchema }),
    tags: TAGS,
  }),
  /**
   * Null while the data file is in order. Else the program carries only this and the ways on (`records.restore`,
   * `records.salvage`, `records.takeAsItIs`, and the folders to restore from); every other operation answers `damaged`.
   */
  'records.rescue': op({
    kind: 'query',
    input: nothing,
    output: z.strictObject({ rescue: rescueSchema.nullable() }),
    tags: ['records'],
  }),
  /** Writes what can be read of a damaged file into a new one; the damaged one is kept beside. Refused when it is in order. */
  'records.salvage': op({
    kind: 'act',
    input: nothing,
    output: z.strictObject({ kept: z.string(), contents: contentsSchema, leftOut: z.number().int() }),
    tags: TAGS,
  }),
  /** Goes on with a file that is whole but not as the program left it. Refused otherwise. */
  'records.takeAsItIs': op({ kind: 'act', input: nothing, output: nothing, tags: TAGS }),
  /**
   * Erases what was written about the breeder and the vet, the journal's memory of it included, and overwrites where it
   * stood. Not journaled: it can't be undone. Plans that were handed over stay as they were.
   */
  'records.eraseHouse': op({ kind: 'command', input: nothing, output: nothing, tags: ['house', 'records'] }),
  /**
   * All or nothing, in one entry. `bad-input` for a weight that stands twice in it or does not fit its puppy, `conflict`
   * for a collar that is taken. Puppies that are not named keep their place; new ones follow them.
   */
  'records.import': op({
    kind: 'command',
    input: importSchema,
    output: z.strictObject({ litter: litterSchema, puppies: z.array(puppySchema), readings: z.number().int() }),
    tags: ['litters', 'readings', 'records'],
    largest: 8_000_000,
  }),
  /** Takes in a JSON export of everything. `conflict` unless nothing is written in this file yet. */
  'records.takeIn': op({
    kind: 'command',
    input: z.strictObject({ text: z.string().max(32_000_000) }),
    output: z.strictObject({ contents: contentsSchema }),
    tags: TAGS,
    largest: 70_000_000,
  }),
  /** Writes files into the exports folder and answers their names. Invented litters are left out. */
  'records.export': op({
    kind: 'act',
    input: z.strictObject({ as: z.enum(EXPORTS) }),
    output: z.strictObject({
      folder: z.string(),
      files: z.array(z.strictObject({ file: z.string(), bytes: z.number().int() })),
    }),
    tags: [],
  }),
  /** `too-large` for a file that can only be fetched from its folder. */
  'records.exportFile': op({
    kind: 'query',
    input: z.strictObject({ file: z.string().max(255) }),
    output: z.strictObject({ base64: z.string() }),
    tags: [],
  }),
  /** Invented litters, marked as demo, dated so that the last weigh-in is this morning's. Not journaled. */
  'records.addDemo': op({
    kind: 'command',
    input: z.strictObject({ now: localTimeSchema, utcOffsetMinutes: z.number().int().min(-900).max(900) }),
    output: z.strictObject({ litterIds: z.array(idSchema) }),
    tags: ['litters', 'readings', 'weaning', 'dams', 'records'],
  }),
  /** Removes every demo litter and all that hangs on it, journal included. */
  'records.removeDemo': op({
    kind: 'command',
    input: nothing,
    output: nothing,
    tags: ['litters', 'readings', 'rules', 'foods', 'plans', 'weaning', 'dams', 'records'],
  }),
} as const;

export type OperationName = keyof typeof OPERATIONS;
export type InputOf<N extends OperationName> = z.input<(typeof OPERATIONS)[N]['input']>;
export type OutputOf<N extends OperationName> = z.output<(typeof OPERATIONS)[N]['output']>;

/** Whether the text names an operation; safe against prototype names. */
export function isOperation(name: string): name is OperationName {
  return Object.hasOwn(OPERATIONS, name);
}
