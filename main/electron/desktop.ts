/** The desktop host's life: claims the data folder, opens the data, opens the window, closes in order. */
import { existsSync, mkdirSync } from 'node:fs';
import { homedir } from 'node:os';
import { join } from 'node:path';
import { app, type BrowserWindow, dialog, protocol, session } from 'electron';
import { newId, now } from '../hosting/clock.ts';
import { beginWithDemo } from '../hosting/demo.ts';
import { readWindowFiles } from '../hosting/files.ts';
import { type House, houseOf } from '../hosting/folder.ts';
import { PaperSlots } from '../hosting/slots.ts';
import { noteFault } from '../service/fault-log.ts';
import { openProgramOrRescue } from '../service/program.ts';
import { startFault } from '../service/refusals.ts';
import type { DesktopArguments } from './arguments.ts';
import { chooseDevices } from './devices.ts';
import { carryCalls, tellWindows } from './ipc.ts';
import { setMenu } from './menu.ts';
import { restrictDownloads, restrictNavigation, restrictNetwork } from './navigation.ts';
import { windowPaper } from './paper.ts';
import { restrictPermissions } from './permissions.ts';
import { registerScheme, serveWindow } from './protocol.ts';
import { claimInstance } from './single-instance.ts';
import { loadWindow, makeWindow, reviveWhenGone } from './window.ts';

export interface DesktopOptions {
  readonly args: DesktopArguments;
  /** The built window's folder. */
  readonly windowFolder: string;
  /** The built preload. */
  readonly preload: string;
}

/** The data of both hosts is in the same place; what Chromium keeps for itself goes into a folder of its own. */
function setFolders(args: DesktopArguments): House {
  const house = houseOf(args.data, { platform: process.platform, env: process.env, home: homedir() });
  const { folder } = house;
  // On a stick that is not in, nothing is made in its place.
  if (house.mustExist && !existsSync(folder)) return house;
  const own = join(folder, 'chromium');
  try {
    mkdirSync(own, { recursive: true, mode: 0o700 });
  } catch {
    // Opening the data says why, in the window.
    return house;
  }
  app.setPath('userData', folder);
  app.setPath('sessionData', own);
  return house;
}

/** A mistake while it starts: written down, and said in a sentence. */
export function endInASentence(error: unknown): void {
  const folder = app.getPath('userData');
  dialog.showErrorBox('Whelpside', startFault(error, folder, { now: now(), version: app.getVersion() }));
  app.exit(1);
}

/** Mistakes that nobody caught are written down; what was answered is durable, so the program goes on. */
function noteUncaught(folder: string): void {
  for (const event of ['uncaughtException', 'unhandledRejection'] as const) {
    process.on(event, (error) => noteFault(folder, { now: now(), version: app.getVersion(), operation: 'desktop', error }));
  }
}

/** Asks for a folder with the system's own dialog. */
async function chooseFolder(): Promise<string | null> {
  const { canceled, filePaths } = await dialog.showOpenDialog({ properties: ['openDirectory', 'createDirectory'] });
  return canceled ? null : (filePaths[0] ?? null);
}

/** Starts the program. Must be called before the app is ready; resolves when the window shows the page. */
export async function startDesktop({ args, windowFolder, preload }: DesktopOptions): Promise<void> {
  let window: BrowserWindow | null = null;
  const house = setFolders(args);
  const { folder } = house;
  if (!claimInstance(() => window)) return app.quit();
  noteUncaught(folder);
  app.enableSandbox();
  registerScheme();
  restrictNavigation(app);

  const files = readWindowFiles(windowFolder);
  const slots = new PaperSlots(() => performance.now());
  const paper = windowPaper(preload, slots);
  await app.whenReady();
  const version = app.getVersion();
  const program = openProgramOrRescue({ ...house, now, newId, paper, version, chooseFolder, onChanged: tellWindows });

  // `quit` and not `will-quit`: that one is left out when the program has to end at once.
  app.once('quit', () => program.close());
  restrictPermissions(session.defaultSession);
  restrictDownloads(session.defaultSession);
  restrictNetwork(session.defaultSession);
  chooseDevices(session.defaultSession);
  serveWindow(protocol, files, slots);
  carryCalls(program.dispatch);
  setMenu();
  if (args.demo && !program.isRescue()) await beginWithDemo(program.dispatch);

  const open = async (): Promise<void> => {
    window = makeWindow(preload, folder);
    reviveWhenGone(window, (why) =>
      noteFault(folder, { now: now(), version, operation: 'window', error: new Error(`its process was gone: ${why}`) }),
    );
    window.once('closed', () => {
      window = null;
    });
    await loadWindow(window);
  };
  // On a Mac a program goes on without a window, and a click on its icon brings one back.
  app.on('activate', () => {
    if (window === null) void open();
  });
  app.on('window-all-closed', () => {
    if (process.platform !== 'darwin') app.quit();
  });
  await open();
}
