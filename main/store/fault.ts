/** Why the data file can't be opened or changed: a closed list of codes, each with a plain message. */

/**
 * `damaged` not whole, or not a data file at all, or gone with its log, seal or backups still there · `changed` whole, but
 * not as the program left it · `older` whole, but without what was answered last or what a backup holds · `newer` written by a
 * later version · `foreign` another program's database · `locked` open in another window of this program, or held by
 * another program · `read-only` can't be written · `disk-full` it takes no more · `no-folder` the data folder can't be
 * made or used · `update` a step to the newest shape failed; the file keeps its old shape.
 */
export type StoreCode =
  | 'damaged'
  | 'changed'
  | 'older'
  | 'newer'
  | 'foreign'
  | 'locked'
  | 'read-only'
  | 'disk-full'
  | 'no-folder'
  | 'update';

/** Thrown when the store can't be opened. The file it is about was not changed. */
export class StoreError extends Error {
  readonly code: StoreCode;
  constructor(code: StoreCode, message: string) {
    super(message);
    this.name = 'StoreError';
    this.code = code;
  }
}

/** The code of a SQLite or file system error, or null when it is another kind of error. */
export function storeCodeOf(error: unknown): StoreCode | null {
  if (error instanceof StoreError) return error.code;
  const code = error instanceof Error && 'code' in error && typeof error.code === 'string' ? error.code : '';
  // Where the log's index can't grow, SQLite says so by an I/O error of its own instead of FULL.
  if (/^SQLITE_(FULL|IOERR_(WRITE|SHM\w*|TRUNCATE|FSYNC))$/.test(code) || code === 'ENOSPC' || code === 'EDQUOT')
    return 'disk-full';
  if (/^SQLITE_(READONLY|CANTOPEN|PERM)/.test(code) || code === 'EROFS' || code === 'EACCES' || code === 'EPERM')
    return 'read-only';
  if (/^SQLITE_(CORRUPT|NOTADB|IOERR)/.test(code)) return 'damaged';
  if (/^SQLITE_(BUSY|LOCKED)/.test(code)) return 'locked';
  return null;
}
