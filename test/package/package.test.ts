/** What would ship: the packager's file is checked by the packager itself, which then packs around a stand-in for Electron. */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { createPackage, listPackage } from '@electron/asar';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { make } from '../../build/make.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'pack-'));
const MINUTE = 60_000;

afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** What marks the fuses in Electron's binary; after it come a version, their number and one sign a fuse (@electron/fuses). */
const SENTINEL = 'dL7pKGdnNz796PbbjQWNKmHXBZaB9tsX';
/** Electron's own settings: the fuses of its documentation, in their order, as a fresh binary has them. */
const WIRE_AS_SHIPPED = '\u0001\u000810110001';

/** A folder that the packager takes for an unpacked Electron. */
async function standInForElectron(): Promise<string> {
  const electron = join(folder, 'electron');
  const app = join(folder, 'default-app');
  for (const part of ['locales', 'resources']) mkdirSync(join(electron, part), { recursive: true });
  mkdirSync(app);
  const { version } = JSON.parse(readFileSync(join(root, 'node_modules/electron/package.json'), 'utf8'));
  writeFileSync(join(electron, 'electron'), `#!/bin/sh\n# ${SENTINEL}${WIRE_AS_SHIPPED}\n`, { mode: 0o755 });
  writeFileSync(join(electron, 'version'), version);
  for (const name of ['LICENSE', 'LICENSES.chromium.html', 'chrome-sandbox', 'locales/en-US.pak'])
    writeFileSync(join(electron, name), name);
  writeFileSync(join(app, 'main.js'), '');
  await createPackage(app, join(electron, 'resources/default_app.asar'));
  return electron;
}

interface Packed {
  code: number | null;
  output: string;
}

/** Packs for Linux x64 into the folder, with the project's own file and these changes to it. */
function pack(changes: object): Packed {
  const config = join(folder, 'config.json');
  const common = {
    extends: join(root, 'electron-builder.yml'),
    directories: { output: join(folder, 'dist') },
  };
  writeFileSync(config, JSON.stringify({ ...common, ...changes }));
  const cli = join(root, 'node_modules/electron-builder/cli.js');
  const args = [cli, '--dir', '--linux', '--x64', '--publish', 'never', '--projectDir', root, '--config', config];
  const { status, stdout, stderr } = spawnSync(process.execPath, args, { cwd: root, encoding: 'utf8', timeout: 2 * MINUTE });
  return { code: status, output: stdout + stderr };
}

describe('the package', () => {
  let packed: Packed = { code: null, output: '' };
  let shipped: string[] = [];

  beforeAll(async () => {
    await make();
    packed = pack({ electronDist: await standInForElectron() });
    const archive = join(folder, 'dist/linux-unpacked/resources/app.asar');
    if (existsSync(archive)) shipped = listPackage(archive, { isPack: false }).map((path) => path.replaceAll('\\', '/'));
  }, 3 * MINUTE);

  it('is packed by a file that the packager finds right', () => {
    expect(packed.code, packed.output).toBe(0);
  });

  it('holds the programs and the window', () => {
    for (const path of ['/package.json', '/out/main/main.mjs', '/out/preload/preload.cjs', '/out/renderer/index.html']) {
      expect(shipped).toContain(path);
    }
    expect(shipped.filter((path) => path.endsWith('.woff2')).length).toBeGreaterThan(0);
    expect(shipped).toContain('/node_modules/better-sqlite3/lib/index.js');
  });

  it('holds one native binary, that of the target, and leaves it outside the archive where it can be loaded', () => {
    const binary = 'node_modules/better-sqlite3/prebuilds/linux-x64.node';
    expect(shipped.filter((path) => path.endsWith('.node'))).toEqual([`/${binary}`]);
    expect(existsSync(join(folder, 'dist/linux-unpacked/resources/app.asar.unpacked', binary))).toBe(true);
  });

  it('has its fuses blown in the binary itself', () => {
    const binary = readFileSync(join(folder, 'dist/linux-unpacked/whelpside'), 'latin1');
    const wire = binary.slice(binary.indexOf(SENTINEL) + SENTINEL.length);
    const [version, count] = [wire.charCodeAt(0), wire.charCodeAt(1)];
    expect([version, count]).toEqual([1, 8]);
    const names = ['runAsNode', 'cookies', 'nodeOptions', 'inspect', 'asarIntegrity', 'onlyAsar', 'snapshot', 'filePrivileges'];
    const set = Object.fromEntries(names.map((name, n) => [name, wire[2 + n] === '1']));
    expect(set).toEqual({
      runAsNode: false,
      cookies: true,
      nodeOptions: false,
      inspect: false,
      asarIntegrity: true,
      onlyAsar: true,
      snapshot: false,
      filePrivileges: false,
    });
  });

  it('holds no source of ours, no browser host, and no package but better-sqlite3', () => {
    expect(shipped.filter((path) => /\.tsx?$|\.map$/.test(path))).toEqual([]);
    const folders = new Set(shipped.map((path) => path.split('/')[1]));
    expect([...folders].sort()).toEqual(['node_modules', 'out', 'package.json']);
    expect(new Set(shipped.filter((path) => path.startsWith('/out/')).map((path) => path.split('/')[2]))).toEqual(
      new Set(['main', 'preload', 'renderer']),
    );
    const packages = shipped.filter((path) => path.startsWith('/node_modules/')).map((path) => path.split('/')[2]);
    expect([...new Set(packages)]).toEqual(['better-sqlite3']);
  });
});

describe("the packager's file", () => {
  it('is refused with a key that the packager does not know', () => {
    const { code, output } = pack({ asarr: true });
    expect(code).not.toBe(0);
    expect(output).toContain('asarr');
  });

  it('sets the fuses, names a binary for each system, and publishes nothing', () => {
    const text = readFileSync(join(root, 'electron-builder.yml'), 'utf8');
    for (const line of [
      '  runAsNode: false',
      '  enableCookieEncryption: true',
      '  enableNodeOptionsEnvironmentVariable: false',
      '  enableNodeCliInspectArguments: false',
      '  enableEmbeddedAsarIntegrityValidation: true',
      '  onlyLoadAppFromAsar: true',
      '  grantFileProtocolExtraPrivileges: false',
      'npmRebuild: false',
      'publish: null',
    ]) {
      expect(text.split('\n')).toContain(line);
    }
    for (const system of ['darwin', 'win32', 'linux']) expect(text).toContain(`prebuilds/!(${system}-`);
  });

  it('finds an icon of the size it asks for', () => {
    const png = readFileSync(join(root, 'build/icons/icon.png'));
    expect(png.subarray(1, 4).toString('latin1')).toBe('PNG');
    expect(png.readUInt32BE(16)).toBeGreaterThanOrEqual(512);
    expect(png.readUInt32BE(20)).toBe(png.readUInt32BE(16));
  });
});
