/** Adult weights when the breeder gave none. */
import type { SizeClass } from '../classes.ts';

/** Kilograms. Our own choice, one ordinary weight inside each class; not published. */
export const CLASS_ADULT_KG: Readonly<Record<SizeClass, number>> = { toy: 4, small: 8, medium: 18, large: 32, giant: 55 };

/**
 * Adult dog over adult bitch. Computed: Helmink, Shanks, Leighton 2000 (J Anim Sci 78:27-32) give 31.4 kg for dogs
 * of one large breed and 4.7 kg between the sexes (seen); as a ratio 31.4 / 26.7.
 */
export const DOG_TO_BITCH = 31.4 / 26.7;
