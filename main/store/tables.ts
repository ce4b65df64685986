/**
 * One declaration for each table of facts. Journal, undo, change tags, exports, take-in, salvage, erasing and the removal of the
 * demo read it, so that a new table touches its migration, this list and its feature's store file. `test/main/store/tables.test.ts`
 * says what is missing.
 */

import type { z } from 'zod';
import { chipSchema } from '../../core/care/microchip.ts';
import type { Tag } from '../../core/contract/result.ts';
import { damFieldsSchema, damSchema } from '../../core/dogs/dam.ts';
import { houseDogSchema } from '../../core/dogs/dog.ts';
import { houseRulesSchema, litterRulesSchema, rulesVersionSchema } from '../../core/feeding/rules.ts';
import { storedFoodSchema } from '../../core/food/own-food.ts';
import { feedingSchema, grownDogSchema } from '../../core/food/rotation.ts';
import { eaterSchema, freezerSettingsSchema, packSchema, starterSchema, thawSchema } from '../../core/freezer/pack.ts';
import { anyPlanSchema } from '../../core/homing/document.ts';
import { collarSchema } from '../../core/litter/collar.ts';
import { litterSchema, puppySchema, readingSchema } from '../../core/litter/litter.ts';
import { storedSettingsSchema } from '../../core/people/house.ts';
import { personSchema } from '../../core/people/person.ts';
import { weaningEventSchema } from '../../core/weaning/eaten.ts';
import { weaningPlanSchema } from '../../core/weaning/weaning-plan.ts';
import { earlierReader } from './earlier-tables.ts';
import { json, picked, type Row, reads } from './rows.ts';

/** Which row of another table a row belongs to, by the column that names it. It goes when that row goes. */
interface Belonging {
  readonly to: string;
  readonly by: string;
}

interface Declaration {
  /** The column that says that a row was taken back: undo sets it. Null: undo takes the row out. */
  readonly mark: 'removed' | 'withdrawn' | null;
  /** To whom it belongs; to the house alone when nothing is named. */
  readonly belongs: readonly Belonging[];
  /** Columns that say something about a person, and are erased with what is kept of her. */
  readonly personal: readonly string[];
  /** What the window fetches again when a row is written. */
  readonly tag: Tag;
  /** Whether the program can read the row. May throw for JSON that is none: that is no too. */
  readonly reads: (row: Row) => boolean;
  /** Columns of JSON whose schema is one for everything that was ever written there. */
  readonly documents?: Readonly<Record<string, z.ZodType>>;
  /** May stand in a file that an export is taken into: settings, and what goes with them. A row of the export takes its place. */
  readonly isSetting?: true;
}

const OF_HOUSE = { belongs: [], personal: [] } as const;
const ofLitter = (by = 'litterId') => ({ belongs: [{ to: 'litters', by }], personal: [] }) as const;
const OF_DOG = { belongs: [{ to: 'dogs', by: 'dogId' }], personal: [] } as const;
const OF_PUPPY = { belongs: [{ to: 'puppies', by: 'puppyId' }], personal: [] } as const;

export const TABLES = {
  litters: {
    mark: 'removed',
    belongs: [
      { to: 'dogs', by: 'damId' },
      { to: 'dogs', by: 'sireId' },
    ],
    personal: [],
    tag: 'litters',
    reads: (row) => reads(litterSchema.omit({ demo: true }), row),
  },
  puppies: {
    mark: 'removed',
    ...ofLitter(),
    tag: 'litters',
    reads: (row) => reads(puppySchema.omit({ collar: true }), row) && reads(collarSchema, row),
  },
  readings: {
    mark: 'withdrawn',
    ...OF_PUPPY,
    tag: 'readings',
    reads: (row) => reads(readingSchema.omit({ held: true, kept: true, withdrawn: true }), row),
  },
  plans: {
    mark: 'removed',
    ...OF_PUPPY,
    tag: 'plans',
    reads: (row) => anyPlanSchema.safeParse(json(row['document'])).success,
    documents: { document: anyPlanSchema },
  },
  rules: {
    mark: null,
    ...OF_HOUSE,
    tag: 'rules',
    reads: (row) => reads(rulesVersionSchema, { ...row, from: row['fromDay'], rules: json(row['rules']) }),
    documents: { rules: houseRulesSchema },
  },
  litterRules: {
    mark: null,
    ...ofLitter(),
    tag: 'rules',
    reads: (row) => reads(litterRulesSchema, { ...row, from: row['fromDay'], rules: json(row['rules']) }),
  },
  dogs: { mark: 'removed', ...OF_HOUSE, isSetting: true, tag: 'dogs', reads: (row) => reads(houseDogSchema, row) },
  grownDogs: {
    mark: 'removed',
    isSetting: true,
    ...OF_DOG,
    tag: 'foods',
    reads: (row) => reads(grownDogSchema.omit({ name: true }), row) && typeof row['dogId'] === 'string',
  },
  people: {
    mark: 'removed',
    isSetting: true,
    belongs: [],
    personal: ['name', 'address', 'phone', 'email'],
    tag: 'house',
    reads: (row) => reads(personSchema, row),
  },
  house: {
    mark: null,
    isSetting: true,
    ...OF_HOUSE,
    tag: 'house',
    reads: (row) => storedSettingsSchema.safeParse(json(row['house'])).success,
  },
  foods: {
    mark: 'removed',
    ...OF_HOUSE,
    tag: 'foods',
    reads: (row) => reads(storedFoodSchema.omit({ retired: true }), { ...row, fields: json(row['fields']) }),
  },
  feeding: {
    mark: null,
    isSetting: true,
    ...ofLitter(),
    tag: 'foods',
    reads: (row) =>
      row['id'] === (row['litterId'] ?? 'house') &&
      reads(feedingSchema.omit({ dogs: true }), { ...row, week: json(row['week']) }),
  },
  weaning: {
    mark: 'removed',
    ...ofLitter('id'),
    tag: 'weaning',
    reads: (row) => weaningPlanSchema.safeParse(json(row['plan'])).success,
  },
  weaningEvents: {
    mark: 'removed',
    belongs: [...ofLitter().belongs, ...OF_PUPPY.belongs],
    personal: [],
    tag: 'weaning',
    reads: (row) => reads(weaningEventSchema, { ...row, note: json(row['note']) }),
  },
  chips: {
    mark: 'removed',
    belongs: [{ to: 'puppies', by: 'id' }],
    personal: ['by'],
    tag: 'care',
    reads: (row) => reads(chipSchema, row),
  },
  pregnancies: {
    mark: 'removed',
    belongs: [...ofLitter().belongs, { to: 'dogs', by: 'damId' }],
    personal: [],
    tag: 'dogs',
    reads: ({ id, foodKcal, ...row }) => {
      const fields = picked(damFieldsSchema, { ...row, name: 'in the row of the dog', foodKcalPer100g: foodKcal });
      return reads(damSchema, { id, weights: [], fields });
    },
  },
  damWeights: {
    mark: 'withdrawn',
    belongs: [{ to: 'pregnancies', by: 'pregnancyId' }],
    personal: [],
    tag: 'dogs',
    reads: (row) => reads(damSchema.shape.weights.element, row),
  },
  packs: { mark: 'removed', ...OF_HOUSE, tag: 'freezer', reads: (row) => reads(packSchema, row) },
  thaws: {
    mark: 'removed',
    belongs: [{ to: 'packs', by: 'packId' }],
    personal: [],
    tag: 'freezer',
    reads: (row) => reads(thawSchema, row),
  },
  eaters: {
    mark: 'removed',
    ...OF_DOG,
    tag: 'freezer',
    reads: ({ pregnancyId, ...row }) => reads(eaterSchema.omit({ name: true }), { ...row, damId: pregnancyId }),
  },
  starters: {
    mark: 'removed',
    belongs: [{ to: 'people', by: 'personId' }],
    personal: [],
    tag: 'freezer',
    reads: (row) => reads(starterSchema.omit({ who: true }), row),
  },
  freezer: {
    mark: null,
    isSetting: true,
    ...OF_HOUSE,
    tag: 'freezer',
    reads: (row) => freezerSettingsSchema.safeParse(json(row['settings'])).success,
  },
} as const satisfies Readonly<Record<string, Declaration>>;

export type TableName = keyof typeof TABLES;

/** Tables that hold no facts, each with the tag of the queries that read it. The journal is for undo, and belongs to the file it was made in. */
export const NOT_FACTS: Readonly<Record<string, Tag>> = { journal: 'records' };

/** Whether the table is declared: only those are written by commands. */
export function isTable(name: string): name is TableName {
  return Object.hasOwn(TABLES, name);
}

/** The declaration of a table. */
export function tableOf(name: TableName): Declaration {
  return TABLES[name];
}

/** What changed when rows of these tables were written: their tags, each once. */
export function tagsOf(tables: Iterable<TableName>): Tag[] {
  return [...new Set([...tables].map((table) => TABLES[table].tag))];
}

/** The schema of what stands in a column of JSON, where there is one. */
export function documentSchema(table: string, column: string): z.ZodType | undefined {
  return isTable(table) ? tableOf(table).documents?.[column] : undefined;
}

/** Whether the schemas of the facts let a row in, of a file of that shape. */
export function isReadable(table: string, row: Row, shape: number): boolean {
  const earlier = earlierReader(table, shape);
  return earlier === null ? isTable(table) && TABLES[table].reads(row) : earlier(row);
}
