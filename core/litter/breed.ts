/** A breed is what the breeder wrote. */

const plain = (t: string) =>
  t
    .normalize('NFKC')
    .toLowerCase()
    .replace(/[\s-]+/g, '');

/** Whether two litters are of the same breed, whatever the case, the blanks and the hyphens; never when none was written. */
export function sameBreed(one: string, other: string): boolean {
  return plain(one) !== '' && plain(one) === plain(other);
}
