/** States of a thaw plan in the order in which they are looked at. */
import { at } from './serve.ts';
import type { State } from './walk.ts';

/** States by what they promise, and of equal ones the latest put in. */
export class StateHeap {
  private readonly items: { state: State; promise: number; turn: number }[] = [];
  private turn = 0;

  push(state: State, promise: number): void {
    this.turn += 1;
    this.items.push({ state, promise, turn: this.turn });
    let i = this.items.length - 1;
    while (i > 0) {
      const up = (i - 1) >> 1;
      if (!this.before(i, up)) break;
      this.swap(i, up);
      i = up;
    }
  }

  pop(): { state: State; promise: number } | null {
    const [top] = this.items;
    const last = this.items.pop();
    if (top === undefined || last === undefined) return null;
    if (this.items.length === 0) return top;
    this.items[0] = last;
    let i = 0;
    for (;;) {
      let least = i;
      for (const child of [2 * i + 1, 2 * i + 2]) if (child < this.items.length && this.before(child, least)) least = child;
      if (least === i) return top;
      this.swap(i, least);
      i = least;
    }
  }

  private before(a: number, b: number): boolean {
    const [x, y] = [at(this.items, a), at(this.items, b)];
    return x.promise === y.promise ? x.turn > y.turn : x.promise < y.promise;
  }

  private swap(a: number, b: number): void {
    const [x, y] = [at(this.items, a), at(this.items, b)];
    this.items[a] = y;
    this.items[b] = x;
  }
}
