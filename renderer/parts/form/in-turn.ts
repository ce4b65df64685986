let last: Promise<unknown> = Promise.resolve();

/**
 * One after another: a change of one field is sent as the whole thing it belongs to, so the next field must start from
 * what the last one saved. Never rejects the queue; the caller gets its own error.
 */
export function inTurn<T>(work: () => Promise<T>): Promise<T> {
  const mine = last.then(work, work);
  last = mine;
  return mine;
}
