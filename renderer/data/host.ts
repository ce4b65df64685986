/** The host behind the window: the desktop's bridge where there is one, else the loopback host. The same contract over both. */
import type { InputOf, OperationName, OutputOf } from '../../core/contract/operations.ts';
import { type Result, TAGS, type Tag } from '../../core/contract/result.ts';

export interface Bridge {
  call(name: string, input: unknown): Promise<Result<unknown>>;
  onChanged(listener: (tags: readonly Tag[]) => void): () => void;
}

declare global {
  interface Window {
    readonly whelpside?: Bridge;
  }
}

function loopback(): Bridge {
  const secret = new TabSecret();
  return {
    async call(name, input) {
      const used = await secret.now();
      const result = await post(name, input, used);
      if (result.ok || result.error.code !== 'forbidden') return result;
      // The host was started again: another tab may have come through its door since.
      const fresh = await secret.instead(used);
      return fresh === '' ? result : post(name, input, fresh);
    },
    onChanged(listener) {
      const stop = new AbortController();
      void follow(secret, listener, stop.signal);
      return () => stop.abort();
    },
  };
}

async function post(name: string, input: unknown, secret: string): Promise<Result<unknown>> {
  try {
    const answer = await fetch(`/call/${name}`, {
      method: 'POST',
      headers: { 'content-type': 'application/json', 'x-whelpside': secret },
      body: JSON.stringify(input),
    });
    return (await answer.json()) as Result<unknown>;
  } catch {
    return { ok: false, error: { code: 'unreachable', message: 'the host does not answer' } };
  }
}

const SECRET_ITEM = 'whelpside';
const ASKED_MS = 500;

/** The secret that the door left in this tab; a tab that came another way, or whose secret is of an earlier run, asks the window's other tabs. */
class TabSecret {
  readonly #channel = new BroadcastChannel(SECRET_ITEM);
  #asked: Promise<string> | null = null;

  constructor() {
    this.#channel.addEventListener('message', ({ data }: MessageEvent<unknown>) => {
      if (data === null && this.#own() !== '') this.#channel.postMessage(this.#own());
    });
  }

  now(): Promise<string> {
    return this.#own() === '' ? this.#ask() : Promise.resolve(this.#own());
  }

  /** Another one than that which was not good; empty when no tab has any. */
  instead(stale: string): Promise<string> {
    if (this.#own() === stale) sessionStorage.removeItem(SECRET_ITEM);
    return this.now();
  }

  #own(): string {
    return sessionStorage.getItem(SECRET_ITEM) ?? '';
  }

  #ask(): Promise<string> {
    this.#asked ??= this.#askOthers().finally(() => {
      this.#asked = null;
    });
    return this.#asked;
  }

  #askOthers(): Promise<string> {
    return new Promise((resolve) => {
      const hear = ({ data }: MessageEvent<unknown>) => {
        if (typeof data === 'string' && this.#own() === '') sessionStorage.setItem(SECRET_ITEM, data);
        if (this.#own() !== '') end();
      };
      const end = () => {
        this.#channel.removeEventListener('message', hear);
        clearTimeout(timer);
        resolve(this.#own());
      };
      const timer = setTimeout(end, ASKED_MS);
      this.#channel.addEventListener('message', hear);
      this.#channel.postMessage(null);
    });
  }
}

const AGAIN_MS = 2000;

/** Hears the host's stream of changes, again and again while it can be had. What changed while it could not is not known: everything may have. */
async function follow(secret: TabSecret, listener: (tags: readonly Tag[]) => void, signal: AbortSignal): Promise<void> {
  let isFirst = true;
  while (!signal.aborted) {
    try {
      const used = await secret.now();
      const answer = await fetch('/changed', { headers: { 'x-whelpside': used }, signal });
      if (answer.ok && answer.body !== null) {
        if (!isFirst) listener(TAGS);
        isFirst = false;
        await hearAll(answer.body.pipeThrough(new TextDecoderStream()), listener);
      } else if (answer.status === 403) await secret.instead(used);
    } catch {
      // The host went away, or the window did: the loop looks which.
    }
    await new Promise((resolve) => setTimeout(resolve, AGAIN_MS));
  }
}

async function hearAll(stream: ReadableStream<string>, listener: (tags: readonly Tag[]) => void): Promise<void> {
  const reader = stream.getReader();
  let waiting = '';
  for (let part = await reader.read(); !part.done; part = await reader.read()) {
    const lines = `${waiting}${part.value}`.split('\n');
    waiting = lines.pop() ?? '';
    for (const line of lines) {
      const data = /^data: (.*)/.exec(line)?.[1];
      if (data !== undefined) listener(JSON.parse(data) as Tag[]);
    }
  }
}

let bridge: Bridge | null = null;

function host(): Bridge {
  bridge ??= window.whelpside ?? loopback();
  return bridge;
}

/** Asks the host. Never throws: a host that does not answer is the error `unreachable`. */
export async function call<N extends OperationName>(name: N, input: InputOf<N>): Promise<Result<OutputOf<N>>> {
  return (await host().call(name, input)) as Result<OutputOf<N>>;
}

/** Hears what others changed (another tab, another window). */
export function onChanged(listener: (tags: readonly Tag[]) => void): () => void {
  return host().onChanged(listener);
}
