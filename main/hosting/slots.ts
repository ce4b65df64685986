/** One-time slots through which a document reaches the page that prints it: read once, gone after a minute. */
import { randomBytes } from 'node:crypto';
import type { PaperDocument } from '../../core/contract/paper.ts';

const KEPT_MILLISECONDS = 60_000;

/** The path under which a page fetches the document of a slot; group 1 is the slot's id. */
const PAPER_PATH = /^\/paper\/([A-Za-z0-9_-]{32})$/;

export class PaperSlots {
  readonly #clock: () => number;
  readonly #slots = new Map<string, { document: PaperDocument; until: number }>();

  /** `clock` answers milliseconds that never run backwards. */
  constructor(clock: () => number) {
    this.#clock = clock;
  }

  /** Puts the document into a new slot and answers its id: 192 random bits, base64url. */
  put(document: PaperDocument): string {
    this.#sweep();
    const id = randomBytes(24).toString('base64url');
    this.#slots.set(id, { document, until: this.#clock() + KEPT_MILLISECONDS });
    return id;
  }

  /** The document that a request path names, once; null when there is none (any more). */
  take(path: string): PaperDocument | null {
    this.#sweep();
    const id = PAPER_PATH.exec(path)?.[1] ?? '';
    const slot = this.#slots.get(id);
    this.#slots.delete(id);
    return slot?.document ?? null;
  }

  /** Throws away a slot that nobody came for. */
  drop(id: string): void {
    this.#slots.delete(id);
  }

  #sweep(): void {
    const now = this.#clock();
    for (const [id, slot] of this.#slots) if (slot.until <= now) this.#slots.delete(id);
  }
}
