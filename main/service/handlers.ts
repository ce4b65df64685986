/** What a feature's handlers are given and what they must be. */
import type { z } from 'zod';
import type { OPERATIONS, OperationName, OutputOf } from '../../core/contract/operations.ts';
import type { PaperDocument } from '../../core/contract/paper.ts';
import { type About, type Recorder, runCommand, type Written } from '../store/journal.ts';
import type { Store } from '../store/open.ts';
import type { Timestamp } from '../store/timestamp.ts';

/** Makes paper out of a document. */
export interface PaperPort {
  /** Prints one document on this paper, answers the PDF's bytes. */
  print(document: PaperDocument, paper: 'a4' | 'letter', author?: string): Promise<Uint8Array>;
}

export interface Context {
  readonly store: Store;
  readonly now: () => Timestamp;
  readonly newId: () => string;
  readonly paper: PaperPort | null;
  readonly version: string;
  /** Asks for a folder; null where the host has no dialog for it. */
  readonly chooseFolder: (() => Promise<string | null>) | null;
  readonly reopening: Reopening;
}

/** Closes the data file, works on it, and opens what is there then, `asItIs` when she said so. The handlers that ask are done then. */
export type Reopening = <T>(work: () => T, asItIs?: boolean) => T;

/** A command also says what it wrote: what `command` answers. */
type AnswerOf<N extends OperationName> = (typeof OPERATIONS)[N]['kind'] extends 'command' ? Written<OutputOf<N>> : OutputOf<N>;

/** One handler for each operation: takes what the input schema let through, throws ContractFailure. */
export type Handlers = {
  readonly [N in OperationName]: (input: z.output<(typeof OPERATIONS)[N]['input']>) => AnswerOf<N> | Promise<AnswerOf<N>>;
};

/** The handlers of one feature: `HandlersOf<'growth'>`. */
export type HandlersOf<F extends string> = Pick<Handlers, Extract<OperationName, `${F}.${string}`>>;

/** Runs a command of the contract, with its journal entry, in one transaction. */
export function command<T>(
  c: Context,
  operation: OperationName,
  work: (recorder: Recorder) => { value: T; about: About },
): Written<T> {
  return runCommand(c.store.db, { instant: c.now().instant, operation }, work);
}
