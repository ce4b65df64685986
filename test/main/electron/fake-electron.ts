/**
 * A stand-in for the `electron` module, for tests on a machine without its binary: it notes what it is told and lets a
 * test play the system's part. It decides nothing; what Electron itself does is not tested here.
 */

import { EventEmitter } from 'node:events';
import { PDFDocument } from 'pdf-lib';
import { vi } from 'vitest';

type Handler = (...args: never[]) => unknown;

/** What was called in which order, by name. */
export const order: string[] = [];
const noted = <T extends Handler>(name: string, work: T): T =>
  vi.fn((...args: never[]) => {
    order.push(name);
    return work(...args);
  }) as unknown as T;

export const app = Object.assign(new EventEmitter(), {
  paths: new Map<string, string>(),
  isFirst: true,
  setPath: noted('app.setPath', (name: string, path: string) => void app.paths.set(name, path)),
  requestSingleInstanceLock: noted('app.requestSingleInstanceLock', () => app.isFirst),
  enableSandbox: noted('app.enableSandbox', () => undefined),
  whenReady: noted('app.whenReady', async () => undefined),
  getVersion: () => '0.0.0-test',
  getPath: (name: string) => app.paths.get(name) ?? '',
  quit: noted('app.quit', () => void app.emit('quit')),
  exit: noted('app.exit', (_code: number) => undefined),
});

export class FakeContents extends EventEmitter {
  readonly mainFrame = { url: 'app://whelpside/', parent: null };
  openHandler: ((details: { url: string }) => { action: string }) | null = null;
  readonly sent: [channel: string, payload: unknown][] = [];
  readonly scripts: string[] = [];
  readonly pdfOptions: unknown[] = [];
  ready: string | null = 'true';
  print = vi.fn();
  setWindowOpenHandler(handler: (details: { url: string }) => { action: string }): void {
    this.openHandler = handler;
  }
  /** As Electron does, the payload is cloned. */
  send(channel: string, payload: unknown): void {
    this.sent.push([channel, structuredClone(payload)]);
  }
  async executeJavaScript(script: string): Promise<unknown> {
    this.scripts.push(script);
    return this.ready;
  }
  async printToPDF(options: unknown): Promise<Uint8Array> {
    this.pdfOptions.push(options);
    const pdf = await PDFDocument.create();
    pdf.addPage();
    return await pdf.save();
  }
}

export class BrowserWindow extends EventEmitter {
  static all: BrowserWindow[] = [];
  static focused: BrowserWindow | null = null;
  /** Called with each new window before it loads anything. */
  static onMade: (window: BrowserWindow) => void = () => undefined;
  static getAllWindows(): BrowserWindow[] {
    return BrowserWindow.all.filter((w) => !w.destroyed);
  }
  static getFocusedWindow(): BrowserWindow | null {
    return BrowserWindow.focused;
  }

  readonly options: Record<string, unknown>;
  readonly webContents = new FakeContents();
  readonly loaded: string[] = [];
  destroyed = false;
  shown = false;
  minimised = false;
  maximised = false;
  focusedOnce = false;
  bounds = { x: 10, y: 20, width: 900, height: 700 };

  constructor(options: Record<string, unknown>) {
    super();
    order.push('new BrowserWindow');
    this.options = options;
    BrowserWindow.all.push(this);
    app.emit('web-contents-created', {}, this.webContents);
    BrowserWindow.onMade(this);
  }
  async loadURL(url: string): Promise<void> {
    order.push('loadURL');
    this.loaded.push(url);
    this.emit('ready-to-show');
  }
  show(): void {
    this.shown = true;
  }
  focus(): void {
    this.focusedOnce = true;
  }
  isMinimized(): boolean {
    return this.minimised;
  }
  restore(): void {
    this.minimised = false;
  }
  isMaximized(): boolean {
    return this.maximised;
  }
  maximize(): void {
    this.maximised = true;
  }
  getNormalBounds(): object {
    return this.bounds;
  }
  isDestroyed(): boolean {
    return this.destroyed;
  }
  destroy(): void {
    this.destroyed = true;
  }
}

export const ipcMain = {
  handlers: new Map<string, (event: unknown, ...args: unknown[]) => Promise<unknown>>(),
  handle: noted('ipcMain.handle', (channel: string, handler: (event: unknown, ...args: unknown[]) => Promise<unknown>) => {
    ipcMain.handlers.set(channel, handler);
  }),
};

/** The renderer's side: a call goes to `ipcMain` as from `frame`, cloned both ways as Electron clones it. */
export const ipcRenderer = Object.assign(new EventEmitter(), {
  frame: { url: 'app://whelpside/', parent: null } as { url: string; parent: unknown } | null,
  invoked: [] as string[],
  async invoke(channel: string, ...args: unknown[]): Promise<unknown> {
    ipcRenderer.invoked.push(channel);
    const handler = ipcMain.handlers.get(channel);
    if (handler === undefined) throw new Error(`No handler registered for '${channel}'`);
    return structuredClone(await handler({ senderFrame: ipcRenderer.frame }, ...structuredClone(args)));
  },
});

export const contextBridge = {
  exposed: new Map<string, unknown>(),
  exposeInMainWorld(name: string, api: unknown): void {
    contextBridge.exposed.set(name, api);
  },
};

export const dialog = {
  response: 0,
  boxes: [] as Record<string, unknown>[],
  showErrorBox: vi.fn(),
  folder: null as string | null,
  async showOpenDialog(options: Record<string, unknown>): Promise<{ canceled: boolean; filePaths: string[] }> {
    dialog.boxes.push(options);
    return { canceled: dialog.folder === null, filePaths: dialog.folder === null ? [] : [dialog.folder] };
  },
  async showMessageBox(...args: unknown[]): Promise<{ response: number }> {
    dialog.boxes.push(args.at(-1) as Record<string, unknown>);
    return { response: dialog.response };
  },
};

export const Menu = {
  built: null as unknown,
  set: null as unknown,
  buildFromTemplate(template: unknown): unknown {
    Menu.built = template;
    return { template };
  },
  setApplicationMenu(menu: unknown): void {
    Menu.set = menu;
  },
};

export const protocol = {
  schemes: [] as unknown[],
  handlers: new Map<string, (request: Request) => Response | Promise<Response>>(),
  registerSchemesAsPrivileged: noted(
    'protocol.registerSchemesAsPrivileged',
    (schemes: unknown[]) => void protocol.schemes.push(...schemes),
  ),
  handle: noted(
    'protocol.handle',
    (scheme: string, handler: (request: Request) => Response) => void protocol.handlers.set(scheme, handler),
  ),
};

export const screen = {
  displays: [{ workArea: { x: 0, y: 0, width: 1920, height: 1040 } }],
  getAllDisplays(): { workArea: { x: number; y: number; width: number; height: number } }[] {
    return screen.displays;
  },
};

/** What the system calls, with whatever it has to say. */
type Asked = (...args: unknown[]) => unknown;
const handlers = new Map<string, Asked>();
const keep = (name: string) =>
  noted(`session.${name}`, (handler: Asked) => {
    handlers.set(name, handler);
  });

export const session = {
  defaultSession: Object.assign(new EventEmitter(), {
    /** The handlers set, by the name of the function that set them. */
    handlers,
    setPermissionRequestHandler: keep('setPermissionRequestHandler'),
    setPermissionCheckHandler: keep('setPermissionCheckHandler'),
    setDevicePermissionHandler: keep('setDevicePermissionHandler'),
    webRequest: {
      onBeforeRequest: (filter: { urls: string[] }, handler: Asked): void => {
        handlers.set(`onBeforeRequest ${filter.urls.join(' ')}`, handler);
      },
    },
  }),
};
