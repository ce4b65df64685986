/** What a program is given and what it is, whoever opens it. */
import type { Tag } from '../../core/contract/result.ts';
import type { StoreError } from '../store/fault.ts';
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
  /** A house was kept there before: where nothing is, it is asked for and not begun anew. */
  readonly mustExist?: boolean;
  /** The folder that is usual on this computer, where `folder` is another. */
  readonly usualFolder?: string;
  /** She goes on in another folder from now on; answers whether the next start will know. */
  readonly onMoved?: (folder: string) => boolean;
  /** Hears what each command or act changed. */
  readonly onChanged?: (tags: readonly Tag[]) => void;
  /** Hears of each `internal` error, for the host's log; the answer itself holds no details. */
  readonly onFault?: (operation: string, error: unknown) => void;
}

export interface Program {
  readonly dispatch: Dispatch;
  /** Whether the data file can't be opened, so that only the ways on are carried. */
  isRescue(): boolean;
  /** What stands in the way of opening it while nothing is wrong with the file; else null. */
  barredBy(): StoreError | null;
  close(): void;
}
