/** Ages that several rooms go by. */

/**
 * Eight weeks, in days: the planning curve of weaning ends, a puppy is fed by the house rules from here on, and it may go home in most places
 * (common practice; local law differs).
 */
export const EIGHT_WEEKS = 56;
