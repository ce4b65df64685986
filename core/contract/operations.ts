/**
 * All operations, joined. Both hosts carry exactly these and nothing else: name, kind, input, output, what changes.
 * A `query` changes nothing. A `command` changes facts, in one transaction with one journal entry unless it says
 * otherwise. An `act` does something outside the facts (a backup, a PDF).
 */
import type { z } from 'zod';
import { CARE_OPERATIONS } from './care.ts';
import { DOGS_OPERATIONS } from './dogs.ts';
import { FEEDING_OPERATIONS } from './feeding.ts';
import { FOOD_OPERATIONS } from './food.ts';
import { FREEZER_OPERATIONS } from './freezer.ts';
import { GROWTH_OPERATIONS } from './growth.ts';
import { HOMING_OPERATIONS } from './homing.ts';
import { LITTER_OPERATIONS } from './litter.ts';
import { PAPER_OPERATIONS } from './paper.ts';
import { PEOPLE_OPERATIONS } from './people.ts';
import { RECORDS_OPERATIONS } from './records.ts';
import { WEANING_OPERATIONS } from './weaning.ts';

export const OPERATIONS = {
  ...LITTER_OPERATIONS,
  ...GROWTH_OPERATIONS,
  ...FEEDING_OPERATIONS,
  ...FOOD_OPERATIONS,
  ...DOGS_OPERATIONS,
  ...WEANING_OPERATIONS,
  ...CARE_OPERATIONS,
  ...FREEZER_OPERATIONS,
  ...HOMING_OPERATIONS,
  ...PEOPLE_OPERATIONS,
  ...PAPER_OPERATIONS,
  ...RECORDS_OPERATIONS,
} as const;

export type OperationName = keyof typeof OPERATIONS;
export type InputOf<N extends OperationName> = z.input<(typeof OPERATIONS)[N]['input']>;
export type OutputOf<N extends OperationName> = z.output<(typeof OPERATIONS)[N]['output']>;

/** Whether the text names an operation; safe against prototype names. */
export function isOperation(name: string): name is OperationName {
  return Object.hasOwn(OPERATIONS, name);
}
