/** The event stream that tells every open tab what changed. */
import type { ServerResponse } from 'node:http';
import type { Tag } from '../../core/contract/result.ts';

const BEAT_MILLISECONDS = 25_000;
const MOST_TABS = 32;

export class ChangeStream {
  readonly #tabs = new Set<ServerResponse>();
  #beat: NodeJS.Timeout | null = null;

  /** Takes over a response whose head is not sent yet. False when too many tabs listen already. */
  open(response: ServerResponse, headers: Record<string, string>): boolean {
    if (this.#tabs.size >= MOST_TABS) return false;
    response.writeHead(200, { ...headers, 'content-type': 'text/event-stream', 'cache-control': 'no-store' });
    response.write('retry: 2000\n\n');
    this.#tabs.add(response);
    response.once('close', () => this.#left(response));
    // A silent stream would be dropped by a sleeping machine without either side noticing.
    this.#beat ??= setInterval(() => this.#send(': still here\n\n'), BEAT_MILLISECONDS).unref();
    return true;
  }

  tell(tags: readonly Tag[]): void {
    this.#send(`data: ${JSON.stringify(tags)}\n\n`);
  }

  close(): void {
    for (const tab of this.#tabs) tab.end();
  }

  #send(text: string): void {
    for (const tab of this.#tabs) tab.write(text);
  }

  #left(response: ServerResponse): void {
    this.#tabs.delete(response);
    if (this.#tabs.size > 0 || this.#beat === null) return;
    clearInterval(this.#beat);
    this.#beat = null;
  }
}
