/**
 * Published times for thawing and keeping raw meat (table 5.1 of the project's notes). They are for food that people eat; none is written
 * for dogs. Freezing stops bacteria and does not kill them, so every clock starts again when the meat is thawed.
 */
import type { Known } from '../feeding/known.ts';

export interface Published<T> {
  readonly value: T;
  readonly source: string;
  readonly known: Known;
}

const FSIS = 'USDA Food Safety and Inspection Service, The Big Thaw';

/** Warmest refrigerator in °C: 40 °F in the US, 5 °C in the UK; 4 °C satisfies both. */
export const REFRIGERATOR_C: Published<number> = {
  value: 4,
  source: 'FoodSafety.gov (40 °F or colder, second-hand); Food Standards Scotland (0 to 5 °C)',
  known: 'second-hand',
};

/** In the refrigerator, for a pack of up to so much. */
export const REFRIGERATOR_THAW: Published<{ readonly hours: number; readonly kg: number }> = {
  value: { hours: 24, kg: 2.25 },
  source: 'USDA Food Safety and Inspection Service, "The Big Thaw": 24 h for each 4 to 5 lb',
  known: 'second-hand',
};

export const FREEZER_C: Published<number> = { value: -18, source: 'FoodSafety.gov (0 °F)', known: 'second-hand' };

/** Cold water, in a leak-proof bag, changed every half hour: up to 1 lb in an hour, 3 to 4 lb in 2 to 3 hours, more at half an hour a pound. */
export const COLD_WATER: Published<{ readonly pounds: number; readonly hours: number }[]> & {
  readonly hoursPerPoundAbove: number;
  readonly changeMinutes: number;
} = {
  value: [
    { pounds: 1, hours: 1 },
    { pounds: 4, hours: 3 },
  ],
  hoursPerPoundAbove: 0.5,
  changeMinutes: 30,
  source: `${FSIS}: cold water; feed at once`,
  known: 'seen',
};

/** Hours above 4 °C after which raw meat is thrown away; one hour when it is warmer than 32 °C. */
export const OUT_OF_THE_COLD: Published<{ readonly hours: number; readonly hoursInHeat: number; readonly heatC: number }> = {
  value: { hours: 2, hoursInHeat: 1, heatC: 32 },
  source: `${FSIS}: never on the counter or in warm water`,
  known: 'second-hand',
};

/** Hours that mince, poultry and offal keep once thawed in the refrigerator. */
export const MINCE_KEEPS_UK: Published<number> = {
  value: 24,
  source: 'Food Standards Agency (UK): use within 24 hours of thawing',
  known: 'second-hand',
};
export const MINCE_KEEPS_US: Published<number> = {
  value: 48,
  source: 'USDA Food Safety and Inspection Service: 1 to 2 days after thawing in the refrigerator',
  known: 'second-hand',
};

/** Hours that whole cuts keep once thawed in the refrigerator. */
export const WHOLE_CUTS_KEEP: Published<{ readonly low: number; readonly high: number }> = {
  value: { low: 72, high: 120 },
  source: 'USDA Food Safety and Inspection Service: roasts, steaks and chops, 3 to 5 days',
  known: 'second-hand',
};

/** Months for which quality holds in a freezer at -18 °C. It is safe for longer. */
export const QUALITY_MONTHS: Published<{ readonly mince: number; readonly pieces: number; readonly wholeBird: number }> = {
  value: { mince: 4, pieces: 9, wholeBird: 12 },
  source: 'FoodSafety.gov, cold food storage chart: mince 3 to 4 months, poultry pieces 9, whole birds 12',
  known: 'second-hand',
};

/** Whether thawed raw meat may be frozen again: in the US when it thawed in the refrigerator, in the UK and Ireland never. */
export const REFREEZING: Published<{ readonly us: 'thawed-cold'; readonly ukIe: 'never' }> = {
  value: { us: 'thawed-cold', ukIe: 'never' },
  source: 'USDA; Food Standards Agency (UK)',
  known: 'second-hand',
};

/** What breeders do with a pack that thawed on the counter. Shown only beside the official two hours, and never planned. */
export const COUNTER_IN_THE_TRADE: Published<{ readonly days: number }> = {
  value: { days: 2 },
  source: 'common practice, no source',
  known: 'common practice',
};
