/** A program on a throw-away data folder, as the tests of stores and services open it. */
import { randomUUID } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { openProgram, type PaperPort, type Program, type ProgramOptions } from '../../main/service/program.ts';
import { machineClock } from '../contract/world.ts';

/** A new empty folder; `remove` takes it away again. */
export function scratchFolder(): { folder: string; remove(): void } {
  const folder = mkdtempSync(join(tmpdir(), 'whelpside-test-'));
  return { folder, remove: () => rmSync(folder, { recursive: true, force: true }) };
}

/** Answers bytes that name the plan, in place of a real PDF. */
const namingPaper: PaperPort = {
  print: async (document, paper) => new TextEncoder().encode(`%PDF-1.7 ${document.name} on ${paper}`),
};

export function openOn(folder: string, more: Partial<ProgramOptions> = {}): Program {
  return openProgram({
    folder,
    now: machineClock,
    newId: randomUUID,
    paper: namingPaper,
    version: '0.0.0-test',
    onFault: console.error,
    ...more,
  });
}
