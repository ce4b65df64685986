/** A breed is what the breeder wrote. */

/** Its letters and figures alone, so that case, blanks, hyphens and accents don't matter. */
function plainBreed(breed: string): string {
  return breed
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]/gu, '');
}

/** Whether two litters are of the same breed, however it is spelled; never when none was written. */
export function sameBreed(one: string, other: string): boolean {
  return plainBreed(one) !== '' && plainBreed(one) === plainBreed(other);
}
