/** What a program is given and what it is, whoever opens it. */
import type { Tag } from '../../core/contract/result.ts';
import type { Timestamp } from '../store/timestamp.ts';
import type { Dispatch } from './dispatch.ts';
import type { PaperPort } from './handlers.ts';

export interface ProgramOptions {
  /** The data folder; made if it is missing. */
  readonly folder: string;
  readonly now: () => Timestamp;
  /** A fresh id: 8 to 40 of a-z, 0-9 and hyphen, such as a UUID. */
  readonly newId: () => string;
  /** Null when no engine that can make a PDF was found. */
  readonly paper: PaperPort | null;
  readonly version: string;
  /** Asks for a folder with a dialog; left out or null where the host has none. Answers null when she chose none. */
  readonly chooseFolder?: (() => Promise<string | null>) | null;
  /** Hears what each command or act changed. */
  readonly onChanged?: (tags: readonly Tag[]) => void;
  /** Hears of each `internal` error, for the host's log; the answer itself holds no details. */
  readonly onFault?: (operation: string, error: unknown) => void;
}

export interface Program {
  readonly dispatch: Dispatch;
  /** Whether the data file is not in order, so that only the ways to rescue it are carried. */
  isRescue(): boolean;
  close(): void;
}
