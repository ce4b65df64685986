/** House rules by the day they come into force. */

import type Database from 'better-sqlite3';
import { type LitterRules, litterRulesSchema, type RulesVersion, rulesVersionSchema } from '../../core/feeding/rules.ts';
import { jsonOrNull, type Recorder } from './journal.ts';
import type { Row } from './rows.ts';

/** The breeder's own versions, latest day first. */
export function rulesVersions(db: Database.Database): RulesVersion[] {
  return db.prepare<[], Row>('SELECT id, fromDay, rules FROM rules ORDER BY fromDay DESC').all().map(toVersion);
}

/** The version that comes into force on exactly that day. */
export function rulesFrom(db: Database.Database, day: string): RulesVersion | null {
  const row = db.prepare<[string], Row>('SELECT id, fromDay, rules FROM rules WHERE fromDay = ?').get(day);
  return row === undefined ? null : toVersion(row);
}

export function insertRules(recorder: Recorder, version: RulesVersion): void {
  recorder.insert('rules', { id: version.id, fromDay: version.from, rules: JSON.stringify(version.rules) });
}

export function updateRules(recorder: Recorder, version: RulesVersion): void {
  recorder.update('rules', version.id, { rules: JSON.stringify(version.rules) });
}

function toVersion(row: Row): RulesVersion {
  return rulesVersionSchema.parse({ id: row['id'], from: row['fromDay'], rules: JSON.parse(String(row['rules'])) });
}

const LITTER_RULES = `SELECT r.id, r.litterId, r.fromDay, r.rules FROM litterRules r JOIN litters l ON l.id = r.litterId WHERE l.removed = 0`;

/** What litters have of their own, latest day first. */
export function litterRules(db: Database.Database): LitterRules[] {
  return db.prepare<[], Row>(`${LITTER_RULES} ORDER BY r.fromDay DESC, r.litterId`).all().map(toLitterRules);
}

/** The litter's version that comes into force on exactly that day. */
export function litterRulesFrom(db: Database.Database, litterId: string, day: string): LitterRules | null {
  const row = db.prepare<[string, string], Row>(`${LITTER_RULES} AND r.litterId = ? AND r.fromDay = ?`).get(litterId, day);
  return row === undefined ? null : toLitterRules(row);
}

export function insertLitterRules(recorder: Recorder, version: LitterRules): void {
  recorder.insert('litterRules', {
    id: version.id,
    litterId: version.litterId,
    fromDay: version.from,
    rules: jsonOrNull(version.rules),
  });
}

export function updateLitterRules(recorder: Recorder, version: LitterRules): void {
  recorder.update('litterRules', version.id, { rules: jsonOrNull(version.rules) });
}

function toLitterRules(row: Row): LitterRules {
  const rules = row['rules'] ?? null;
  return litterRulesSchema.parse({
    id: row['id'],
    litterId: row['litterId'],
    from: row['fromDay'],
    rules: rules === null ? null : JSON.parse(String(rules)),
  });
}
