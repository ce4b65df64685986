/**
 * The copies that nobody asks for: one before the first command of a day, with everything until then, and one with the
 * day's own weights: at two in the afternoon, when the morning is done, after a quarter of an hour without a command,
 * and at close. A copy that can't be made stops no weighing: it is tried again ten minutes later.
 */
import { clockOf, dateOf } from '../../core/calendar/clock.ts';
import { acceptedNames } from '../store/accepted.ts';
import { backUpDaily, backUpLater } from '../store/backup.ts';
import type { Store } from '../store/open.ts';
import type { Timestamp } from '../store/timestamp.ts';

const TRY_AGAIN_MS = 10 * 60_000;
const QUIET_MS = 15 * 60_000;
const MORNING_DONE = '14:00';

export class DayCopies {
  readonly #store: Store;
  readonly #now: () => Timestamp;
  #doneOn: string;
  /** The first and the last command that no copy holds; null when there is none. */
  #waiting: { readonly since: Timestamp; readonly last: Timestamp } | null = null;
  #failedAt = Number.NEGATIVE_INFINITY;

  constructor(store: Store, now: () => Timestamp) {
    this.#store = store;
    this.#now = now;
    this.#doneOn = store.isNew ? dateOf(now().local) : '';
  }

  /** Makes the copy of a day that begins. */
  beforeCommand(): void {
    const moment = this.#now();
    if (dateOf(moment.local) === this.#doneOn) return;
    this.#attempt(moment, () => {
      if (backUpDaily(this.#store.db, this.#store.folder, moment)) this.#waiting = null;
      this.#doneOn = dateOf(moment.local);
    });
  }

  /** Something was written. */
  afterCommand(): void {
    const moment = this.#now();
    this.#waiting = { since: this.#waiting?.since ?? moment, last: moment };
  }

  /** Asked each minute, and before each command. Answers whether a copy was made. */
  whenDue(): boolean {
    const now = this.#now();
    return this.#waiting !== null && this.#isDue(now, this.#waiting) && this.#later(now);
  }

  atClose(): void {
    this.#failedAt = Number.NEGATIVE_INFINITY;
    if (this.#waiting !== null) this.#later(this.#now());
  }

  #isDue(moment: Timestamp, { since, last }: { since: Timestamp; last: Timestamp }): boolean {
    const morningIsDone = clockOf(moment.local) >= MORNING_DONE && clockOf(since.local) < MORNING_DONE;
    // A clock that was set back counts as time gone by.
    return morningIsDone || Math.abs(moment.instant - last.instant) >= QUIET_MS;
  }

  #later(moment: Timestamp): boolean {
    return this.#attempt(moment, () => {
      backUpLater(this.#store.db, this.#store.folder, moment, acceptedNames(this.#store.file));
      this.#waiting = null;
    });
  }

  #attempt(moment: Timestamp, work: () => void): boolean {
    if (Math.abs(moment.instant - this.#failedAt) < TRY_AGAIN_MS) return false;
    try {
      work();
      return true;
    } catch {
      this.#failedAt = moment.instant;
      return false;
    }
  }
}
