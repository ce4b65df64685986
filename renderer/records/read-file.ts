/** A file that she chose, read in the window: nothing of it reaches the program before she has seen what it says. */
import readXlsx from 'read-excel-file/universal';
import {
  LARGEST_FILE,
  type Table,
  type TableFault,
  type TableResult,
  tableOfSheet,
  tableOfText,
} from '../../core/records/table.ts';
import { UnpackError, unpackSheet } from './unpack-sheet.ts';

export interface NamedTable {
  /** The sheet's name; empty where there is only one. */
  readonly name: string;
  readonly table: Table;
}

export type FileRead =
  | { readonly is: 'tables'; readonly tables: readonly NamedTable[] /** It was not UTF-8. */; readonly oldText: boolean }
  /** An export of a whole house, perhaps. */
  | { readonly is: 'json'; readonly text: string }
  | { readonly is: 'fault'; readonly fault: TableFault };

const LARGEST_JSON = 32_000_000;

/** Reads a file by what is in it, not by its name. Never throws. */
export async function readFile(file: Blob): Promise<FileRead> {
  if (file.size > LARGEST_JSON) return fault('too-large');
  // A file that was moved or taken out since can't be read any more.
  const buffer = await file.arrayBuffer().catch(() => null);
  if (buffer === null) return fault('not-text');
  const bytes = new Uint8Array(buffer);
  if (bytes[0] === 0x50 && bytes[1] === 0x4b) return bytes.length > LARGEST_FILE ? fault('too-large') : readSheets(bytes);
  const { text, old } = decoded(bytes);
  if (text === null) return fault('not-text');
  if (/^\ufeff?\s*\{/.test(text)) return { is: 'json', text };
  const read = tableOfText(text);
  return read.ok ? { is: 'tables', tables: [{ name: '', table: read.table }], oldText: old } : { is: 'fault', fault: read.fault };
}

function fault(code: 'too-large' | 'not-text' | 'not-a-sheet' | 'empty' | 'too-many-rows' | 'too-many-columns'): FileRead {
  return { is: 'fault', fault: { code } };
}

/** UTF-8, UTF-16 with its mark, else the old code page of Western spreadsheets, which any bytes are. */
function decoded(bytes: Uint8Array): { text: string | null; old: boolean } {
  const mark =
    bytes[0] === 0xff && bytes[1] === 0xfe ? 'utf-16le' : bytes[0] === 0xfe && bytes[1] === 0xff ? 'utf-16be' : 'utf-8';
  try {
    return { text: new TextDecoder(mark, { fatal: true }).decode(bytes), old: false };
  } catch {
    return bytes.includes(0) ? { text: null, old: false } : { text: new TextDecoder('windows-1252').decode(bytes), old: true };
  }
}

async function readSheets(bytes: Uint8Array<ArrayBuffer>): Promise<FileRead> {
  try {
    const sheets = await readXlsx(await unpackSheet(bytes), { trim: false });
    const read = sheets.map(({ sheet, data }): { name: string; result: TableResult } => ({
      name: sheet,
      result: tableOfSheet((data as readonly (readonly unknown[])[]).map((row) => row.map(cellText))),
    }));
    const tables = read.flatMap(({ name, result }) => (result.ok ? [{ name, table: result.table }] : []));
    if (tables.length > 0)
      return { is: 'tables', tables: tables.length === 1 ? tables.map((t) => ({ ...t, name: '' })) : tables, oldText: false };
    const failed = read.find(({ result }) => !result.ok && result.fault.code !== 'empty')?.result;
    return failed !== undefined && !failed.ok ? { is: 'fault', fault: failed.fault } : fault('empty');
  } catch (error) {
    return fault(error instanceof UnpackError ? error.code : 'not-a-sheet');
  }
}

/** A sheet's cell as text. Its dates have no zone: they come as UTC; a time alone comes as a day around 1900. */
export function cellText(cell: unknown): string {
  if (cell instanceof Date) {
    if (Number.isNaN(cell.getTime())) return '';
    const iso = new Date(Math.round(cell.getTime() / 60_000) * 60_000).toISOString();
    if (cell.getUTCFullYear() <= 1900) return iso.slice(11, 16);
    return iso.slice(11, 16) === '00:00' ? iso.slice(0, 10) : `${iso.slice(0, 10)}T${iso.slice(11, 16)}`;
  }
  // A sum in binary leaves 0.41200000000000003 behind.
  if (typeof cell === 'number') return String(Number(cell.toPrecision(12)));
  return cell === null || cell === undefined ? '' : String(cell);
}
