/** Plans that were handed over, each kept as the document it was. */

import type Database from 'better-sqlite3';
import { type HandedPlan, handedPlanSchema } from '../../core/contract/homing.ts';
import { type AnyPlan, anyPlanSchema, type PlanDocument, planDocumentSchema } from '../../core/homing/document.ts';
import type { Recorder } from './journal.ts';
import type { Row } from './rows.ts';

const SEEN = `FROM plans k JOIN puppies p ON p.id = k.puppyId JOIN litters l ON l.id = p.litterId
  WHERE k.removed = 0 AND p.removed = 0 AND l.removed = 0`;

/** The kept plans of a litter's puppies, latest first. */
export function plansOf(db: Database.Database, litterId: string): HandedPlan[] {
  const sql = `SELECT k.id, k.puppyId, k.handedOver, k.recordedInstant, k.title ${SEEN} AND p.litterId = ?
    ORDER BY k.handedOver DESC, k.recordedInstant DESC, k.id`;
  return db
    .prepare<[string], Row>(sql)
    .all(litterId)
    .map((row) => handedPlanSchema.parse(row));
}

/** The document of a kept plan, as it was handed over. */
export function keptDocument(db: Database.Database, planId: string): AnyPlan | null {
  const stored = db.prepare<[string], string>(`SELECT k.document ${SEEN} AND k.id = ?`).pluck().get(planId);
  return stored === undefined ? null : anyPlanSchema.parse(JSON.parse(stored));
}

export function hasPlan(db: Database.Database, puppyId: string): boolean {
  return db.prepare(`SELECT 1 ${SEEN} AND k.puppyId = ? LIMIT 1`).get(puppyId) !== undefined;
}

/** Keeps a plan. The document is checked first: one that can't be read back must never be kept. */
export function insertPlan(recorder: Recorder, plan: HandedPlan, document: PlanDocument): void {
  recorder.insert('plans', { ...plan, document: JSON.stringify(planDocumentSchema.parse(document)) });
}
