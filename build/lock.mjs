/** An exclusive lock on this folder, for what must not happen twice at once: the set-up and the build. Plain JavaScript, no packages. */
import { randomUUID } from 'node:crypto';
import { mkdirSync, readdirSync, readFileSync, renameSync, rmSync, statSync, utimesSync, writeFileSync } from 'node:fs';
import { hostname } from 'node:os';
import { basename, dirname, join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';

const HEARTBEAT_MS = 5_000;
/** A lock whose holder can't be asked (another machine, no owner written) is dropped when nobody has touched it for this long. */
const SILENT_MS = 60_000;
const REUSED_PID_MS = 15 * 60_000;

/** @typedef {{ token: string, host: string, pids: number[] }} Owner */
/** @typedef {{ alsoHeldBy(pid: number): void, release(): void }} Lock */

/**
 * Waits until the lock is ours. A lock left by a killed process is taken over.
 * @param {string} path the lock, a folder that exists while it is held
 * @param {() => void} onWait called once, when somebody else holds it
 * @returns {Promise<Lock>}
 */
export async function takeLock(path, onWait) {
  let told = false;
  for (;;) {
    const lock = tryLock(path);
    if (lock !== null) return lock;
    if (buryIfDead(path)) continue;
    if (!told) onWait();
    told = true;
    await sleep(200);
  }
}

/**
 * @param {string} path
 * @returns {Lock | null}
 */
function tryLock(path) {
  try {
    mkdirSync(path);
  } catch (error) {
    if (codeOf(error) === 'EEXIST') return null;
    throw error;
  }
  /** @type {Owner} */
  const owner = { token: randomUUID(), host: hostname(), pids: [process.pid] };
  const write = () => writeFileSync(join(path, 'owner'), JSON.stringify(owner));
  write();
  const beat = setInterval(() => touch(path), HEARTBEAT_MS);
  beat.unref();
  return {
    // A child outlives a killed parent: the lock stays held until both are gone.
    alsoHeldBy(pid) {
      owner.pids.push(pid);
      write();
    },
    release() {
      clearInterval(beat);
      if (readOwner(path)?.token === owner.token) rmSync(path, { recursive: true, force: true });
      for (const grave of gravesOf(path)) rmSync(grave, { recursive: true, force: true });
    },
  };
}

/**
 * Moves a dead holder's lock out of the way. The grave is named after the dead lock and stays until the next holder is done, so
 * that a second waiter, deciding on the same dead lock a moment later, can't move the new holder's lock: the rename fails.
 * @param {string} path
 */
function buryIfDead(path) {
  const owner = readOwner(path);
  const silentSince = lastTouched(path);
  if (silentSince === null || !isDead(owner, Date.now() - silentSince)) return false;
  try {
    renameSync(path, `${path}-${owner?.token ?? Math.round(silentSince)}`);
    return true;
  } catch (error) {
    if (['ENOENT', 'ENOTEMPTY', 'EEXIST', 'EPERM'].includes(codeOf(error))) return false;
    throw error;
  }
}

/**
 * @param {Owner | null} owner
 * @param {number} silentMs
 */
function isDead(owner, silentMs) {
  if (owner === null || owner.host !== hostname()) return silentMs > SILENT_MS;
  // A process number may have gone to another program since, hence an end to trusting it.
  return owner.pids.every((pid) => !isAlive(pid)) || silentMs > REUSED_PID_MS;
}

/** @param {string} path */
function lastTouched(path) {
  try {
    return statSync(path).mtimeMs;
  } catch {
    return null;
  }
}

/** @param {number} pid */
function isAlive(pid) {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return codeOf(error) === 'EPERM';
  }
}

/**
 * @param {string} path
 * @returns {Owner | null}
 */
function readOwner(path) {
  try {
    return JSON.parse(readFileSync(join(path, 'owner'), 'utf8'));
  } catch {
    return null;
  }
}

/** @param {string} path */
function gravesOf(path) {
  const folder = dirname(path);
  return readdirSync(folder)
    .filter((name) => name.startsWith(`${basename(path)}-`))
    .map((name) => join(folder, name));
}

/** @param {string} path */
function touch(path) {
  try {
    utimesSync(path, new Date(), new Date());
  } catch {
    // The folder was cleaned away under us; there is nothing to keep alive.
  }
}

/** @param {unknown} error */
function codeOf(error) {
  return error instanceof Error && 'code' in error ? String(error.code) : '';
}
