/** Ages that several rooms go by. */

/**
 * Eight weeks, in days: the planning curve of weaning ends, a puppy is fed by the house rules from here on, and it may go home in most places
 * (common practice; local law differs).
 */
export const EIGHT_WEEKS = 56;

/** Seven weeks, in days: from here on a puppy that goes home earlier than most is fed by the house rules as it is (common practice; local law differs). */
export const SEVEN_WEEKS = 49;
