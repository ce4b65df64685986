/** The host behind the window: the desktop's bridge where there is one, else the loopback host. The same contract over both. */
import type { InputOf, OperationName, OutputOf } from '../../core/contract/operations.ts';
import type { Result, Tag } from '../../core/contract/result.ts';

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
  const secret = tabSecret();
  return {
    async call(name, input) {
      try {
        const answer = await fetch(`/call/${name}`, {
          method: 'POST',
          headers: { 'content-type': 'application/json', 'x-whelpside': await secret },
          body: JSON.stringify(input),
        });
        return (await answer.json()) as Result<unknown>;
      } catch {
        return { ok: false, error: { code: 'unreachable', message: 'the host does not answer' } };
      }
    },
    onChanged(listener) {
      const stop = new AbortController();
      void follow(secret, listener, stop.signal);
      return () => stop.abort();
    },
  };
}

const SECRET_ITEM = 'whelpside';
const ASKED_MS = 500;

/** The secret that the door left in this tab; a tab that came another way asks the window's other tabs for it. */
function tabSecret(): Promise<string> {
  const channel = new BroadcastChannel(SECRET_ITEM);
  const own = () => sessionStorage.getItem(SECRET_ITEM) ?? '';
  channel.addEventListener('message', ({ data }: MessageEvent<unknown>) => {
    if (data === null && own() !== '') channel.postMessage(own());
  });
  if (own() !== '') return Promise.resolve(own());
  return new Promise((resolve) => {
    const hear = ({ data }: MessageEvent<unknown>) => {
      if (typeof data === 'string' && own() === '') sessionStorage.setItem(SECRET_ITEM, data);
      if (own() !== '') resolve(own());
    };
    channel.addEventListener('message', hear);
    channel.postMessage(null);
    setTimeout(() => resolve(own()), ASKED_MS);
  });
}

const AGAIN_MS = 2000;

/** Hears the host's stream of changes, again and again while it can be had. */
async function follow(secret: Promise<string>, listener: (tags: readonly Tag[]) => void, signal: AbortSignal): Promise<void> {
  while (!signal.aborted) {
    try {
      const answer = await fetch('/changed', { headers: { 'x-whelpside': await secret }, signal });
      if (answer.ok && answer.body !== null) await hearAll(answer.body.pipeThrough(new TextDecoderStream()), listener);
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
