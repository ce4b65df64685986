/** Every outside check there is. */
import { feedingRows } from './feeding.ts';
import { feedingAmountRows } from './feeding-amounts.ts';
import { freezerRows } from './freezer.ts';
import { growthRows } from './growth.ts';
import { growthLineRows } from './growth-line.ts';
import { nursingRows } from './nursing.ts';
import type { EvidenceRow } from './row.ts';
import { standardsRows } from './standards.ts';
import { tradeRows } from './trade.ts';
import { tradeFoodRows } from './trade-foods.ts';

export const allRows: readonly EvidenceRow[] = [
  ...growthRows,
  ...growthLineRows,
  ...feedingRows,
  ...feedingAmountRows,
  ...freezerRows,
  ...nursingRows,
  ...standardsRows,
  ...tradeRows,
  ...tradeFoodRows,
];
