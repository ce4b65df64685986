/** What was done, backups, rescue, import, export, the demo. */

import { z } from 'zod';
import { litterFieldsSchema, litterSchema, puppyFieldsSchema, puppySchema, readingFieldsSchema } from '../litter/litter.ts';
import { idSchema, instantSchema, localTimeSchema, longText } from '../units/fields.ts';
import { doneSchema } from './journal.ts';
import { nothing, op } from './operation.ts';
import { TAGS } from './result.ts';

const backupSchema = z.strictObject({
  file: z.string(),
  instant: instantSchema,
  kind: z.enum(['daily', 'before-migration', 'before-restore', 'by-hand']),
  bytes: z.number().int(),
  checked: z.boolean(),
});
export type Backup = z.infer<typeof backupSchema>;

/** How much a data file holds; what was taken back does not count. */
const countsSchema = z.strictObject({
  litters: z.number().int(),
  puppies: z.number().int(),
  readings: z.number().int(),
  /** When the latest of its weights was written. */
  lastReading: instantSchema.nullable(),
});
export type Counts = z.infer<typeof countsSchema>;

/** What is wrong with the data file, and the ways on. */
const rescueSchema = z.strictObject({
  /**
   * `damaged` not whole, or no data file at all · `changed` whole, but not as the program left it · `older` whole, but without
   * what was answered last or what a backup holds · `lost` not there, but something of it is · `newer` of a newer version ·
   * `foreign` says that it is another program's · `update` can't be brought to this version. What only stands in the way:
   * `locked` open in another window · `read-only` the folder can't be written · `disk-full` · `no-folder` the folder can't be
   * made or is not there · `stranger` another program's file, where none of hers lay.
   */
  problem: z.enum([
    'damaged',
    'changed',
    'older',
    'lost',
    'newer',
    'foreign',
    'update',
    'locked',
    'read-only',
    'disk-full',
    'no-folder',
    'stranger',
  ]),
  file: z.string(),
  bytes: z.number().int(),
  /** What can still be read of it; null when nothing can. */
  readable: countsSchema.nullable(),
  /**
   * Newest first. Every one was read through: `checked` says whether it is whole; `counts` is null when it is not.
   * `missing` counts the weights that can be read in the data file and are not in the copy; null when none can be counted.
   */
  backups: z.array(
    z.strictObject({ backup: backupSchema, counts: countsSchema.nullable(), missing: z.number().int().nullable() }),
  ),
  canChooseFolder: z.boolean(),
  /** Whether the data file can be taken along into another folder. */
  canTakeAlong: z.boolean(),
  /** The folder that is usual on this computer, where the house is kept in another; else null. */
  usualFolder: z.string().nullable(),
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

/** Files that were written, and the folder that they lie in. */
export const exportedSchema = z.strictObject({
  folder: z.string(),
  files: z.array(z.strictObject({ file: z.string(), bytes: z.number().int() })),
});

export const RECORDS_OPERATIONS = {
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
    tags: ['records', 'litters', 'house'],
  }),
  'records.done': op({
    kind: 'query',
    input: z.strictObject({ limit: z.number().int().min(1).max(500) }),
    output: z.strictObject({ done: z.array(doneSchema) }),
    tags: ['records', 'house'],
  }),
  'records.undo': op({
    kind: 'command',
    input: nothing,
    output: z.strictObject({ done: doneSchema }),
  }),
  'records.redo': op({
    kind: 'command',
    input: nothing,
    output: z.strictObject({ done: doneSchema }),
  }),
  'records.backUp': op({ kind: 'act', input: nothing, output: z.strictObject({ backup: backupSchema }), tags: ['records'] }),
  /** A checked copy in a folder that is there: a stick, another disk. */
  'records.backUpTo': op({
    kind: 'act',
    input: z.strictObject({ folder: folderSchema }),
    output: z.strictObject({ backup: backupSchema }),
    tags: ['records'],
  }),
  'records.backupsIn': op({
    kind: 'query',
    input: z.strictObject({ folder: folderSchema }),
    output: z.strictObject({ backups: z.array(backupSchema) }),
    tags: ['records'],
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
    output: z.strictObject({ kept: z.string(), counts: countsSchema }),
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
  /**
   * Writes what can be read of a damaged file into a new one, with what backups hold of the rest (`fromBackups` rows); the
   * damaged one is kept beside. Refused when it is in order.
   */
  'records.salvage': op({
    kind: 'act',
    input: nothing,
    output: z.strictObject({
      kept: z.string(),
      counts: countsSchema,
      leftOut: z.number().int(),
      fromBackups: z.number().int(),
    }),
    tags: TAGS,
  }),
  /** Goes on with a file that is whole but not as the program left it, or older. Refused otherwise. */
  'records.takeAsItIs': op({ kind: 'act', input: nothing, output: nothing, tags: TAGS }),
  /** Looks once more whether the data file can be opened. Refused while it is open. */
  'records.tryAgain': op({ kind: 'act', input: nothing, output: z.strictObject({ open: z.boolean() }), tags: TAGS }),
  /**
   * Goes on in another folder that is there, with the data file taken along or with what lies there (nothing: an empty
   * house). `conflict` when a file is to be taken along to where one is; `remembered`: the next start looks there too.
   * Refused while a file is open.
   */
  'records.elsewhere': op({
    kind: 'act',
    input: z.strictObject({ folder: folderSchema, takeAlong: z.boolean() }),
    output: z.strictObject({ remembered: z.boolean() }),
    tags: TAGS,
  }),
  /** Begins with an empty file; what stands in its place is kept beside. Refused when the file is in order. */
  'records.beginAnew': op({ kind: 'act', input: nothing, output: z.strictObject({ kept: z.string() }), tags: TAGS }),
  /** The program's own mistakes, newest first, one dated line each, and the file they stand in. */
  'records.faults': op({
    kind: 'query',
    input: nothing,
    output: z.strictObject({ file: z.string(), lines: z.array(z.string()) }),
    tags: ['records'],
  }),
  /**
   * All or nothing, in one entry. `bad-input` for a weight that stands twice in it or does not fit its puppy, `conflict`
   * for a collar that is taken. Puppies that are not named keep their place; new ones follow them.
   */
  'records.import': op({
    kind: 'command',
    input: importSchema,
    output: z.strictObject({ litter: litterSchema, puppies: z.array(puppySchema), readings: z.number().int() }),
    largest: 8_000_000,
  }),
  /** Takes in a JSON export of everything. `conflict` unless nothing is written in this file yet. */
  'records.takeIn': op({
    kind: 'command',
    input: z.strictObject({ text: z.string().max(32_000_000) }),
    output: z.strictObject({ counts: countsSchema }),
    largest: 70_000_000,
  }),
  /** Writes files into the exports folder and answers their names. Invented litters are left out. */
  'records.export': op({
    kind: 'act',
    input: z.strictObject({ as: z.enum(EXPORTS) }),
    output: exportedSchema,
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
  }),
  /** Removes every demo litter and all that hangs on it, journal included. */
  'records.removeDemo': op({
    kind: 'command',
    input: nothing,
    output: nothing,
  }),
} as const;
