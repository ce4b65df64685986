/** Exports in open formats: CSV, XLSX, JSON with its schema, a copy of the data file, and what is kept of a person. */

import writeXlsx from 'write-excel-file/node';
import { clockOf, dateOf } from '../../core/calendar/clock.ts';
import type { ExportKind } from '../../core/contract/records.ts';
import { ContractFailure } from '../../core/contract/result.ts';
import { DEFAULT_HOUSE } from '../../core/people/house.ts';
import type { Person } from '../../core/people/person.ts';
import { type Cell, writeCsv } from '../../core/records/csv.ts';
import { weightsTable } from '../../core/records/export.ts';
import { backUpInto } from '../store/backup.ts';
import { type ExportedFile, exportsFolder, isExportName, makeExportsFolder, readExport, writeExport } from '../store/exports.ts';
import { asJson, type ColumnShape, exportedRows, exportJsonSchema, shapeOf, type TableRows } from '../store/full-export.ts';
import { readingsOf } from '../store/growth.ts';
import { allLitters, puppiesOf } from '../store/litter.ts';
import { allPeople, rowsAbout, storedHouse } from '../store/people.ts';
import { found } from './facts.ts';
import type { Context, HandlersOf } from './handlers.ts';

const SCHEMA_FILE = 'whelpside export';
/** A spreadsheet's cell holds no more; a column with more in it is left out there. */
const LONGEST_CELL = 32_000;

export function exportHandlers(c: Context): Pick<HandlersOf<'records'>, 'records.export' | 'records.exportFile'> {
  const { folder } = c.store;
  return {
    'records.export': async ({ as }) => ({ files: await writers[as](c), folder: exportsFolder(folder) }),

    'records.exportFile': ({ file }) => {
      if (!isExportName(file)) throw new ContractFailure('bad-input', 'that is not the name of an export', 'file');
      const bytes = readExport(folder, file);
      if (bytes === 'too-large') throw new ContractFailure('too-large', 'the file has to be fetched from its folder');
      return { base64: found(bytes, 'export').toString('base64') };
    },
  };
}

const writers: Readonly<Record<ExportKind, (c: Context) => ExportedFile[] | Promise<ExportedFile[]>>> = {
  weights: (c) => [write(c, 'weights', 'csv', writeCsv(weightRows(c), { forSpreadsheet: true }))],

  csv: (c) =>
    filled(c).map((table) =>
      write(
        c,
        table.name,
        'csv',
        writeCsv(
          asCells(table, () => true),
          { forSpreadsheet: true },
        ),
      ),
    ),

  xlsx: async (c) => {
    const sheets = [
      { sheet: 'weights', data: weightRows(c).map(asSheetRow) },
      ...filled(c).map((table) => ({
        sheet: table.name,
        data: asCells(table, (column) => fitsCell(table, column)).map(asSheetRow),
      })),
    ];
    return [write(c, 'everything', 'xlsx', await writeXlsx(sheets.map((s) => ({ ...s, stickyRowsCount: 1 }))).toBuffer())];
  },

  json: (c) => {
    const schema = writeExport(c.store.folder, SCHEMA_FILE, 'schema.json', pretty(exportJsonSchema(c.store.db)));
    return [write(c, 'everything', 'json', pretty({ $schema: schema.file, ...fullDocument(c) })), schema];
  },

  file: (c) => {
    const { file, bytes } = backUpInto(c.store.db, makeExportsFolder(c.store.folder), c.now(), 'by-hand');
    return [{ file, bytes }];
  },

  person: (c) => {
    const { breederName, address, phone, email, vetName, vetPhone, vetOutOfHours } = storedHouse(c.store.db) ?? DEFAULT_HOUSE;
    const buyers = allPeople(c.store.db).filter((person) => person.role === 'buyer');
    const persons = {
      breeder: { name: breederName, address, phone, email },
      vet: { name: vetName, phone: vetPhone, outOfHours: vetOutOfHours },
      buyers,
    };
    return [write(c, 'persons', 'json', pretty({ format: 'whelpside persons', version: 1, exported: c.now().local, persons }))];
  },
};

/** What is kept of one person, as it stands in the file. */
export function writePerson(c: Context, person: Person): ExportedFile {
  const kept = rowsAbout(c.store.db, person);
  return write(c, 'person', 'json', pretty({ format: 'whelpside person', version: 1, exported: c.now().local, person, kept }));
}

function write(c: Context, what: string, end: string, content: string | Uint8Array): ExportedFile {
  const { local } = c.now();
  return writeExport(c.store.folder, `whelpside ${dateOf(local)} ${clockOf(local).replace(':', '')} ${what}`, end, content);
}

function pretty(value: unknown): string {
  return `${JSON.stringify(value, null, 1)}\n`;
}

function weightRows(c: Context): Cell[][] {
  const { db } = c.store;
  const litters = allLitters(db).filter((litter) => !litter.demo);
  return weightsTable(
    litters.map((litter) => ({ litter, puppies: puppiesOf(db, litter.id), readings: readingsOf(db, litter.id) })),
  );
}

function filled(c: Context): TableRows[] {
  return exportedRows(c.store.db).filter((table) => table.rows.length > 0);
}

/** Headings and rows as people read them: marks as yes and no, instants as RFC 3339 in UTC. */
function asCells(table: TableRows, keeps: (column: ColumnShape) => boolean): Cell[][] {
  const columns = table.columns.filter(keeps);
  return [
    columns.map((column) => column.name),
    ...table.rows.map((row) => columns.map((column) => shown(column, row[column.name] ?? null))),
  ];
}

function shown(column: ColumnShape, cell: Cell): Cell {
  if (cell === null) return null;
  if (column.kind === 'flag') return cell === 1 ? 'yes' : 'no';
  return column.kind === 'whole' && /instant$/i.test(column.name) ? new Date(Number(cell)).toISOString() : cell;
}

function fitsCell(table: TableRows, column: ColumnShape): boolean {
  return table.rows.every((row) => String(row[column.name] ?? '').length <= LONGEST_CELL);
}

/** Text is text there, so that nothing in it is run: no formula is ever written. */
function asSheetRow(row: readonly Cell[]) {
  return row.map((cell) =>
    cell === null || cell === ''
      ? null
      : typeof cell === 'number'
        ? { value: cell, type: Number }
        : { value: cell, type: String },
  );
}

/** Everything as JSON: see `exportSchema`. */
function fullDocument(c: Context): object {
  const tables = exportedRows(c.store.db).map((table) => [
    table.name,
    table.rows.map((row) =>
      Object.fromEntries(table.columns.map((column) => [column.name, asJson(column, row[column.name] ?? null)])),
    ),
  ]);
  return {
    format: 'whelpside',
    version: 1,
    shape: shapeOf(c.store.db),
    exported: c.now().local,
    tables: Object.fromEntries(tables),
  };
}
