/**
 * The browser host: opens the data, serves the window on this computer only and prints its address. It is a way of
 * using the program where the desktop can't be had, and holds no rule of its own.
 */
import { homedir } from 'node:os';
import { fileURLToPath } from 'node:url';
import pack from '../../package.json' with { type: 'json' };
import { newId, now } from '../hosting/clock.ts';
import { beginWithDemo } from '../hosting/demo.ts';
import { readWindowFiles } from '../hosting/files.ts';
import { type House, houseOf } from '../hosting/folder.ts';
import { PaperSlots } from '../hosting/slots.ts';
import { faultFile, noteFault } from '../service/fault-log.ts';
import { openProgramOrRescue } from '../service/program.ts';
import { sentenceFor, startFault } from '../service/refusals.ts';
import { type HostArguments, readArguments, USAGE } from './arguments.ts';
import { lastPort, rememberPort } from './last-port.ts';
import { type Letter, openBrowser } from './open-browser.ts';
import { chromiumPaper, printingBrowser } from './pdf.ts';
import { createServer, type Served } from './server.ts';

/** Ends the start with one sentence on the terminal. */
class Halt extends Error {}

const files = () => {
  const folder = fileURLToPath(new URL('../renderer/', import.meta.url));
  try {
    return readWindowFiles(folder);
  } catch {
    throw new Halt("The window's files are not there. Start with npm start, which builds them.");
  }
};

const isTaken = (error: unknown): boolean =>
  error instanceof Error && 'code' in error && (error.code === 'EADDRINUSE' || error.code === 'EACCES');

/** At the port that she named, else at that of last time, else at a free one. */
async function served(port: number, last: number | null, serve: (port: number) => Promise<Served>): Promise<Served> {
  if (port === 0 && last !== null) {
    try {
      return await serve(last);
    } catch (error) {
      if (!isTaken(error)) throw error;
    }
  }
  try {
    return await serve(port);
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? error.code : null;
    if (code === 'EADDRINUSE') throw new Halt(`Port ${port} is taken. Leave --port out to get a free one.`);
    if (code === 'EACCES') throw new Halt(`Port ${port} may not be used. Leave --port out to get a free one.`);
    throw error;
  }
}

function closeOnSignal(close: () => Promise<void>): void {
  let closing = false;
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) {
    process.on(signal, () => {
      if (closing) process.exit(1);
      closing = true;
      close().then(
        () => process.exit(0),
        () => {
          console.error('Whelpside ended, but not in order. What was answered is kept.');
          process.exit(1);
        },
      );
    });
  }
}

async function host(args: HostArguments, house: House): Promise<void> {
  const window = files();
  const slots = new PaperSlots(() => performance.now());
  const browser = await printingBrowser();
  let server: Served | null = null;
  const place = () => {
    if (server === null) throw new Error('paper before the server is up');
    return server;
  };
  const paper = browser === null ? null : chromiumPaper(browser, slots, place);
  const program = openProgramOrRescue({
    ...house,
    now,
    newId,
    paper,
    version: pack.version,
    onChanged: (tags) => server?.tell(tags),
  });
  let letter: Letter | null = null;
  const onEntered = (): void => {
    letter?.remove();
    // The key that was printed first is good for one window only.
    console.log(`For another window: ${server?.address}`);
  };
  try {
    if (args.demo && !program.isRescue()) await beginWithDemo(program.dispatch);
    server = await served(args.port, lastPort(house.folder), (port) =>
      createServer({ dispatch: program.dispatch, files: window, slots, port, onEntered }),
    );
    // A folder that is open elsewhere, or not hers, keeps what it has.
    if (program.barredBy() === null) rememberPort(house.folder, server.port);
  } catch (error) {
    program.close();
    throw error;
  }
  const { address, close } = server;
  closeOnSignal(async () => {
    letter?.remove();
    await paper?.close();
    await close();
    program.close();
  });
  if (program.isRescue()) {
    const why = sentenceFor(program.barredBy(), house.folder) ?? 'The data file is not in order.';
    console.log(`${why} Nothing was changed; the window names the ways on.`);
  }
  console.log(`Whelpside is open at ${address}`);
  if (args.open) letter = openBrowser(address);
}

/** A mistake that nobody caught is written down, and ends the program in a sentence: what was answered is durable. */
function printFaults(folder: string): void {
  for (const event of ['uncaughtException', 'unhandledRejection'] as const) {
    process.on(event, (error) => {
      noteFault(folder, { now: now(), version: pack.version, operation: 'host', error });
      console.error(`Whelpside ended: something went wrong inside it. What it was is written in ${faultFile(folder)}.`);
      process.exit(1);
    });
  }
}

const args = readArguments(process.argv.slice(2), process.cwd());
if (typeof args === 'string') {
  console.error(`${args}\n${USAGE}`);
  process.exitCode = 2;
} else {
  const house = houseOf(args.data, { platform: process.platform, env: process.env, home: homedir() });
  const { folder } = house;
  printFaults(folder);
  try {
    await host(args, house);
  } catch (error) {
    console.error(error instanceof Halt ? error.message : startFault(error, folder, { now: now(), version: pack.version }));
    process.exitCode = 1;
  }
}
