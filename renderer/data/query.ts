/** Facts as the window holds them: one entry per operation and input, fetched again when a tag it carries changes. */
import { useCallback, useSyncExternalStore } from 'react';
import { type InputOf, OPERATIONS, type OperationName, type OutputOf } from '../../core/contract/operations.ts';
import type { ContractError, Result, Tag } from '../../core/contract/result.ts';
import { useWindow } from '../state/window.ts';
import { call } from './host.ts';

export type Fetched<T> =
  | { status: 'loading'; value: null; error: null }
  | { status: 'ready'; value: T; error: null }
  | { status: 'failed'; value: T | null; error: ContractError };

interface Entry {
  readonly name: OperationName;
  readonly input: unknown;
  readonly listeners: Set<() => void>;
  state: Fetched<unknown>;
  /** Counts fetches, so that an answer overtaken by a later one is dropped. */
  turn: number;
}

const LOADING: Fetched<never> = { status: 'loading', value: null, error: null };
const entries = new Map<string, Entry>();

function entryOf(name: OperationName, input: unknown): Entry {
  const key = `${name} ${JSON.stringify(input)}`;
  let entry = entries.get(key);
  if (entry === undefined) {
    entry = { name, input, listeners: new Set(), state: LOADING, turn: 0 };
    entries.set(key, entry);
    void refresh(entry);
  }
  return entry;
}

async function refresh(entry: Entry): Promise<void> {
  entry.turn += 1;
  const turn = entry.turn;
  const result = (await call(entry.name, entry.input as never)) as Result<unknown>;
  if (turn !== entry.turn) return;
  entry.state = result.ok
    ? { status: 'ready', value: result.value, error: null }
    : { status: 'failed', value: entry.state.value, error: result.error };
  for (const listener of entry.listeners) listener();
}

function dependsOn(name: OperationName, tags: readonly Tag[]): boolean {
  const operation = OPERATIONS[name];
  return operation.kind === 'query' && operation.tags.some((tag) => tags.includes(tag));
}

/** Fetches again what the tags touch; resolves when the facts on screen are the new ones. */
export async function invalidate(tags: readonly Tag[]): Promise<void> {
  const touched = [...entries.entries()].filter(([, e]) => dependsOn(e.name, tags));
  const waiting: Promise<void>[] = [];
  for (const [key, entry] of touched) {
    if (entry.listeners.size === 0) entries.delete(key);
    else waiting.push(refresh(entry));
  }
  await Promise.all(waiting);
}

/** The facts an operation answers, kept fresh while a component shows them. `input` is compared by value. */
export function useQuery<N extends OperationName>(name: N, input: InputOf<N>): Fetched<OutputOf<N>> {
  const key = JSON.stringify(input);
  const subscribe = useCallback(
    (listener: () => void) => {
      const entry = entryOf(name, JSON.parse(key));
      entry.listeners.add(listener);
      return () => {
        entry.listeners.delete(listener);
      };
    },
    [name, key],
  );
  const snapshot = useCallback(() => entryOf(name, JSON.parse(key)).state, [name, key]);
  return useSyncExternalStore(subscribe, snapshot) as Fetched<OutputOf<N>>;
}

/** Does one operation and fetches again what it touched. */
export type Run = <N extends OperationName>(
  name: N,
  input: InputOf<N>,
  options?: { quiet?: boolean },
) => Promise<Result<OutputOf<N>>>;

let turn: Promise<unknown> = Promise.resolve();

/**
 * Jobs of commands, one after another in the order they were asked for: an undo never overtakes a weight that is still on its
 * way. Inside a job only the `run` it is given may be used; the outer one would wait for the job itself.
 */
export function inOrder<T>(job: (run: Run) => Promise<T>): Promise<T> {
  const mine = turn.then(() => job(runNow));
  turn = mine.catch(() => undefined);
  return mine;
}

/**
 * Does a command or an act. On success the facts it touched are fetched again before this resolves; a failure is said
 * in the foot (unless `quiet`, when the caller says it in place) and nothing typed is lost.
 */
export function run<N extends OperationName>(
  name: N,
  input: InputOf<N>,
  options: { quiet?: boolean } = {},
): Promise<Result<OutputOf<N>>> {
  return OPERATIONS[name].kind === 'command' ? inOrder((now) => now(name, input, options)) : runNow(name, input, options);
}

async function runNow<N extends OperationName>(
  name: N,
  input: InputOf<N>,
  options: { quiet?: boolean } = {},
): Promise<Result<OutputOf<N>>> {
  const result = await call(name, input);
  if (result.ok) {
    useWindow.getState().setFailure(null);
    // What the foot says of a number would outlive the number.
    if (name === 'records.undo' || name === 'records.redo') useWindow.getState().explain(null);
    await invalidate(result.changed);
  } else if (options.quiet !== true) {
    useWindow.getState().setFailure(result.error);
  }
  return result;
}
