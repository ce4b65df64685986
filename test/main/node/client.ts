/** A bare HTTP client for the loopback server: sends exactly the headers it is given, in the spelling it is given. */
import { type IncomingHttpHeaders, request } from 'node:http';
import { connect } from 'node:net';

export interface Ask {
  readonly method?: string;
  readonly path: string;
  readonly headers?: Readonly<Record<string, string | string[]>>;
  readonly body?: string | Uint8Array;
}

export interface Answer {
  readonly status: number;
  readonly headers: IncomingHttpHeaders;
  readonly text: string;
}

/** Asks 127.0.0.1. A `host` header is added unless one is given; an empty one leaves it out. */
export function ask(port: number, { method = 'GET', path, headers = {}, body }: Ask): Promise<Answer> {
  const { host = `127.0.0.1:${port}`, ...others } = headers;
  const sent = host === '' ? others : { host, ...others };
  return new Promise((resolve, reject) => {
    const asked = request({ host: '127.0.0.1', port, method, path, setHost: false, agent: false, headers: sent }, (answer) => {
      const parts: Buffer[] = [];
      answer.on('data', (part: Buffer) => parts.push(part));
      answer.once('end', () =>
        resolve({ status: answer.statusCode ?? 0, headers: answer.headers, text: Buffer.concat(parts).toString('utf8') }),
      );
      answer.once('error', reject);
    });
    asked.once('error', reject);
    asked.end(body);
  });
}

export interface Entered {
  readonly origin: string;
  readonly cookie: string;
  /** What each call has in its header. */
  readonly secret: string;
  /** Headers of a call. */
  readonly headers: Record<string, string>;
}

/** Goes through the door with the key of a printed address, as its script does. */
export async function enter(address: string): Promise<Entered> {
  const { origin, hash } = new URL(address);
  const answer = await fetch(`${origin}/enter`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ key: hash.slice(1) }),
  });
  if (!answer.ok) throw new Error(`not let in: ${answer.status}`);
  const cookie = answer.headers.getSetCookie()[0]?.split(';')[0] ?? '';
  const { secret } = (await answer.json()) as { secret: string };
  return { origin, cookie, secret, headers: { cookie, 'content-type': 'application/json', 'x-whelpside': secret } };
}

/** Writes the text to the port as it is and answers everything that comes back until the server hangs up. */
export function raw(port: number, text: string): Promise<string> {
  return new Promise((resolve, reject) => {
    const socket = connect(port, '127.0.0.1', () => socket.write(text));
    let heard = '';
    socket.on('data', (part) => {
      heard += part.toString('latin1');
    });
    socket.once('close', () => resolve(heard));
    socket.once('error', reject);
  });
}
