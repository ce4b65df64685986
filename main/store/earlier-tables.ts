/** How rows of earlier shapes are read, where a table has another shape now or is no more: a damaged file is rescued at the shape it has. */
import { z } from 'zod';
import { damFieldsSchema, damSchema } from '../../core/dogs/dam.ts';
import { feedingSchema, grownDogFieldsSchema } from '../../core/food/rotation.ts';
import { eaterSchema, starterSchema } from '../../core/freezer/pack.ts';
import { storedSettingsSchema } from '../../core/people/house.ts';
import { json, picked, type Row, reads } from './rows.ts';

type Reader = (row: Row) => boolean;

const text = z.string().max(4000);
/** The people of the house, as they stood among its settings. */
const peopleSchema = z
  .object({ breederName: text, address: text, phone: text, email: text, vetName: text, vetPhone: text })
  .partial();

const fedWithDogsSchema = feedingSchema.extend({ dogs: z.array(grownDogFieldsSchema) });

/** By the last shape that they belong to. */
const EARLIER: readonly { readonly shape: number; readonly readers: Readonly<Record<string, Reader>> }[] = [
  {
    shape: 5,
    readers: {
      dams: ({ id, foodKcal, ...row }) =>
        reads(damSchema, { id, weights: [], fields: picked(damFieldsSchema, { ...row, foodKcalPer100g: foodKcal }) }),
      freezerDogs: (row) => reads(eaterSchema, row),
      starters: (row) => reads(starterSchema, row),
      feeding: (row) => reads(fedWithDogsSchema, { ...row, week: json(row['week']), dogs: json(row['dogs']) }),
      house: (row) => isHouse(json(row['house'])),
    },
  },
];

function isHouse(house: unknown): boolean {
  const people = peopleSchema.safeParse(house);
  if (!people.success) return false;
  const { breederName: _, address: _a, phone: _p, email: _e, vetName: _v, vetPhone: _w, ...settings } = house as object & Row;
  return storedSettingsSchema.safeParse(settings).success;
}

/** How a row of that table is read in a file of that shape; null where it is read as it is now. */
export function earlierReader(table: string, shape: number): Reader | null {
  return EARLIER.find((earlier) => shape <= earlier.shape && Object.hasOwn(earlier.readers, table))?.readers[table] ?? null;
}
