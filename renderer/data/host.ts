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
  const key = document.querySelector<HTMLMetaElement>('meta[name="x-whelpside"]')?.content ?? '';
  return {
    async call(name, input) {
      try {
        const answer = await fetch(`/call/${name}`, {
          method: 'POST',
          headers: { 'content-type': 'application/json', 'x-whelpside': key },
          body: JSON.stringify(input),
        });
        return (await answer.json()) as Result<unknown>;
      } catch {
        return { ok: false, error: { code: 'unreachable', message: 'the host does not answer' } };
      }
    },
    onChanged(listener) {
      const source = new EventSource('/changed');
      source.addEventListener('message', (event) => {
        listener(JSON.parse(String(event.data)) as Tag[]);
      });
      return () => source.close();
    },
  };
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
