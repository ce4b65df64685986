/**
 * What "bone" means in calcium: grams of calcium in a gram of bone, by what was weighed. The same word differs by a factor of three to
 * four, so the basis always stands beside the share.
 */
import type { Known } from './known.ts';

/**
 * `wet`: whole wet poultry bone with marrow and cartilage, as in the refuse of a piece bought. `clean`: fresh bone cleaned of meat.
 * `solids`: bone solids of the meat-inspection rules. `unknown`: nobody said; the widest range.
 */
export type BoneBasis = 'wet' | 'clean' | 'solids' | 'unknown';

export interface BoneCalcium {
  /** Grams of calcium per gram of bone. */
  readonly low: number;
  readonly high: number;
  readonly source: string;
  readonly known: Known;
}

export const BONE_CALCIUM: Readonly<Record<BoneBasis, BoneCalcium>> = {
  wet: { low: 0.04, high: 0.06, source: 'trade tables for whole wet poultry bone (5.5 % quoted); weak', known: 'second-hand' },
  clean: {
    low: 0.2,
    high: 1 / 4.5,
    source: 'Field 2000, Meat Science 55:255: bone is calcium × 4.5 (cortical) or × 5.0 (broiler, veal, flat)',
    known: 'seen',
  },
  solids: {
    low: 0.175,
    high: 0.25,
    source: 'US Code of Federal Regulations, 9 CFR 381.173 (poultry) and 9 CFR 319.5(a) (livestock)',
    known: 'seen',
  },
  unknown: { low: 0.04, high: 0.25, source: 'widest of the three ways of weighing bone', known: 'computed' },
};

/**
 * Calcium to phosphorus of bone mineral by mass, taken as hydroxyapatite Ca10(PO4)6(OH)2: 10 × 40.078 / (6 × 30.974).
 * Computed from atomic masses.
 */
export const BONE_CALCIUM_TO_PHOSPHORUS = (10 * 40.078) / (6 * 30.974);
