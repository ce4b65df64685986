/** Which rows hang on which, as the declarations of the tables say. */
import type Database from 'better-sqlite3';
import { TABLES, type TableName, tableOf } from './tables.ts';

const NAMES = Object.keys(TABLES) as TableName[];

/** An invented dog that she took for a litter of her own stays: that litter would go with it. */
const INVENTED_DOGS = `
  SELECT id FROM dogs WHERE demo = 1 AND NOT EXISTS
    (SELECT 1 FROM litters l WHERE l.demo = 0 AND (l.damId = dogs.id OR l.sireId = dogs.id))`;

/** The ids of the invented litters and dogs, and of every row that belongs to them, however many tables further on. */
export function inventedRows(db: Database.Database): Map<TableName, Set<string>> {
  const rows = new Map<TableName, Set<string>>(NAMES.map((name) => [name, new Set()]));
  const add = (table: TableName, ids: readonly string[]): boolean => {
    const found = rows.get(table);
    const before = found?.size;
    for (const id of ids) found?.add(id);
    return found?.size !== before;
  };
  add('litters', db.prepare<[], string>('SELECT id FROM litters WHERE demo = 1').pluck().all());
  add('dogs', db.prepare<[], string>(INVENTED_DOGS).pluck().all());
  for (let grows = true; grows; ) {
    grows = false;
    for (const table of NAMES) {
      for (const { to, by } of tableOf(table).belongs) {
        const owners = JSON.stringify([...(rows.get(to as TableName) ?? [])]);
        const sql = `SELECT id FROM ${table} WHERE ${by} IN (SELECT value FROM json_each(?))`;
        if (add(table, db.prepare<[string], string>(sql).pluck().all(owners))) grows = true;
      }
    }
  }
  return rows;
}
