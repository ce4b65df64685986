/**
 * The loopback host over a real data folder, as a process of its own that can be killed. It prints its address and
 * serves until then. Run as `node serving-child.ts FOLDER`.
 */
import { randomUUID } from 'node:crypto';
import { writeSync } from 'node:fs';
import { argv } from 'node:process';
import { PaperSlots } from '../../main/hosting/slots.ts';
import { createServer } from '../../main/node/server.ts';
import { openProgram } from '../../main/service/program.ts';
import { machineClock } from '../contract/world.ts';

const program = openProgram({ folder: argv[2] ?? '', now: machineClock, newId: randomUUID, paper: null, version: '0' });
const server = await createServer({
  dispatch: program.dispatch,
  files: { page: '<!doctype html><html><head></head><body></body></html>', others: new Map() },
  slots: new PaperSlots(() => performance.now()),
  port: 0,
});
writeSync(1, `${server.address}\n`);
