import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { expect, it } from 'vitest';
import { APPLICATION_ID } from '../../../main/store/file.ts';
import { MIGRATIONS, runStep } from '../../../main/store/migrations.ts';
import { salvage } from '../../../main/store/salvage.ts';

it('takes the litters of a file of any older shape, whose rows lack what came later', () => {
  const folder = mkdtempSync(join(tmpdir(), 'whelpside-salvage-'));
  for (const shape of MIGRATIONS.keys()) {
    const file = join(folder, `${shape}.sqlite`);
    const db = new Database(file);
    for (const step of MIGRATIONS.slice(0, shape + 1)) runStep(db, step);
    db.pragma(`application_id = ${APPLICATION_ID}`);
    db.pragma(`user_version = ${shape + 1}`);
    db.exec(`INSERT INTO litters (id, name, dam, sire, breed, whelpedAt, whelpedInstant, demo)
      VALUES ('litter-000001', '', 'Yarrow', '', 'Mudi', '2026-03-01T02:00', 1772330400000, 0)`);
    db.close();
    expect(salvage(file, join(folder, `${shape}-rescued.sqlite`)), `shape ${shape + 1}`).toMatchObject({
      counts: { litters: 1 },
      leftOut: 0,
    });
  }
  rmSync(folder, { recursive: true, force: true });
});
