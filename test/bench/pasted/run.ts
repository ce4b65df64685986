/** How long ten thousand pasted weights take, step by step: shown with their findings, written, taken back. Measured, never asserted. */
import { randomUUID } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { now } from '../../../main/hosting/clock.ts';
import { openProgram } from '../../../main/service/program.ts';
import { pastedLog, previewed, takenBack, written } from '../../pasted.ts';

interface Clock {
  readonly wall: number;
  /** What this process itself has worked, however busy the machine is. */
  readonly cpu: number;
}
function clock(): Clock {
  const { user, system } = process.cpuUsage();
  return { wall: performance.now(), cpu: (user + system) / 1000 };
}

const folder = mkdtempSync(join(tmpdir(), 'whelpside-bench-'));
const program = openProgram({ folder, now, newId: randomUUID, paper: null, version: '0' });
try {
  for (const count of [2_500, 5_000, 10_000]) {
    const began = clock();
    const { input } = previewed(pastedLog(count));
    const shown = clock();
    await written(program.dispatch, input);
    const wrote = clock();
    await takenBack(program.dispatch);
    const ms = (from: Clock, to: Clock) =>
      `${(to.wall - from.wall).toFixed(0)} ms (${(to.cpu - from.cpu).toFixed(0)} ms of it at work)`.padStart(32);
    console.log(
      `${String(count).padStart(6)} pasted: shown with findings ${ms(began, shown)}, written ${ms(shown, wrote)}, taken back ${ms(wrote, clock())}`,
    );
  }
} finally {
  program.close();
  rmSync(folder, { recursive: true, force: true });
}
