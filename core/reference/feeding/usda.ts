/**
 * Plain raw ingredients per 100 g of the edible part.
 *
 * Source: USDA National Nutrient Database for Standard Reference, release 26, files ABBREV and FOOD_DES (public domain; seen). The same
 * NDB numbers live on in FoodData Central as "SR Legacy". How obtained: the columns were read from the two files by NDB number.
 * `bonePercent` is the refuse of the piece as bought, so the edible share is 100 − bonePercent; the bone itself is **not** in the
 * other figures. It is null where the bone is ground in, or where there is none to speak of.
 * Vitamin A is given for the livers only; for the others it was not read, which is not the same as none.
 */

export interface Ingredient {
  readonly ndb: string;
  readonly name: string;
  readonly kcal: number;
  /** Grams per 100 g. */
  readonly protein: number;
  readonly fat: number;
  readonly water: number;
  /** Milligrams per 100 g. */
  readonly calciumMg: number;
  readonly phosphorusMg: number;
  readonly bonePercent: number | null;
  readonly vitaminAIu: number | null;
}

export const USDA_SOURCE = 'USDA National Nutrient Database for Standard Reference, release 26 (SR Legacy in FoodData Central)';

type Row = readonly [
  ndb: string,
  name: string,
  kcal: number,
  protein: number,
  fat: number,
  water: number,
  ca: number,
  p: number,
  bone: number | null,
  vitA?: number,
];

const ROWS = [
  ['05100', 'chicken wing, meat and skin', 191, 17.52, 12.85, 69.19, 11, 123, 38],
  ['05084', 'chicken neck, meat and skin', 297, 14.07, 26.24, 59.99, 18, 112, 36],
  ['05048', 'chicken back, meat and skin', 319, 14.05, 28.74, 58.1, 13, 113, 44],
  ['05066', 'chicken drumstick, meat and skin', 161, 18.08, 9.2, 72.46, 8, 163, 33],
  ['05001', 'chicken, whole with giblets', 213, 18.33, 14.83, 66.34, 11, 149, 31],
  ['05179', 'turkey neck, meat only', 125, 16.51, 6.04, 75.92, 24, 160, 60],
  ['05195', 'turkey wing, meat and skin', 197, 20.22, 12.32, 66.49, 14, 165, 33],
  ['10088', 'pork spareribs', 277, 15.47, 23.4, 59.75, 15, 141, 30],
  ['10102', 'pork feet', 212, 23.16, 12.59, 64.99, 70, 75, 29],
  ['10219', 'pork, ground', 263, 16.88, 21.19, 61.06, 14, 175, 0],
  ['23572', 'beef, ground, 80 % lean', 254, 17.17, 20, 61.94, 18, 158, 0],
  ['13498', 'beef, ground, 70 % lean', 332, 14.35, 30, 54.38, 24, 132, 0],
  ['13321', 'beef heart', 112, 17.72, 3.94, 77.11, 7, 212, 0],
  ['13325', 'beef liver', 135, 20.36, 3.63, 70.81, 5, 387, 0, 16898],
  ['05027', 'chicken liver', 119, 16.92, 4.83, 76.46, 8, 297, 0, 11078],
  ['10110', 'pork liver', 134, 21.39, 3.65, 71.06, 9, 288, 0, 21650],
  ['17199', 'lamb liver', 139, 20.38, 5.02, 71.37, 7, 364, 0, 24612],
  ['13341', 'beef tripe, white', 85, 12.07, 3.69, 84.16, 69, 64, 0],
  ['05301', 'poultry, mechanically deboned', 272, 11.39, 24.73, 62.66, 138, 132, null],
  ['13330', 'beef, mechanically separated', 276, 14.97, 23.52, 59.39, 485, 324, null],
  ['10114', 'pork, mechanically separated', 304, 15.03, 26.54, 56.87, 315, 200, null],
  ['11090', 'broccoli', 34, 2.82, 0.37, 89.3, 47, 66, 0],
  ['11233', 'kale', 49, 4.28, 0.93, 84.04, 150, 92, 0],
  ['11124', 'carrot', 41, 0.93, 0.24, 88.29, 33, 35, 0],
  ['01123', 'egg, whole', 143, 12.56, 9.51, 76.15, 56, 198, 12],
] as const satisfies readonly Row[];

export type NdbNumber = (typeof ROWS)[number][0];
const TABLE: readonly Row[] = ROWS;

const BY_NDB = new Map(
  TABLE.map(
    ([ndb, name, kcal, protein, fat, water, calciumMg, phosphorusMg, bonePercent, vitaminAIu = null]): [string, Ingredient] => [
      ndb,
      { ndb, name, kcal, protein, fat, water, calciumMg, phosphorusMg, bonePercent, vitaminAIu },
    ],
  ),
);

/** The ingredient with that NDB number; RangeError when the table has none. */
export function ingredient(ndb: string): Ingredient {
  const found = BY_NDB.get(ndb);
  if (found === undefined) throw new RangeError(`no ingredient ${ndb}`);
  return found;
}

/** Every NDB number of the table, in its order. */
export const NDB_NUMBERS: readonly NdbNumber[] = ROWS.map(([ndb]) => ndb);
