/** The fields in which a form differs from what it was opened with: only these are sent. */
export function changedFields<T extends object>(opened: T, written: T): Partial<T> {
  const changed: Partial<T> = {};
  for (const key of Object.keys(written) as (keyof T)[]) {
    if (JSON.stringify(opened[key]) !== JSON.stringify(written[key])) changed[key] = written[key];
  }
  return changed;
}
