/** A bare HTTP client for the loopback server: sends exactly the headers it is given, in the spelling it is given. */
import { type IncomingHttpHeaders, request } from 'node:http';
import { connect } from 'node:net';

export interface Ask {
  readonly method?: string;
  readonly path: string;
  readonly headers?: Readonly<Record<string, string | readonly string[]>>;
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
    const asked = request(
      { host: '127.0.0.1', port, method, path, setHost: false, agent: false, headers: sent as never },
      (answer) => {
        const parts: Buffer[] = [];
        answer.on('data', (part: Buffer) => parts.push(part));
        answer.once('end', () =>
          resolve({ status: answer.statusCode ?? 0, headers: answer.headers, text: Buffer.concat(parts).toString('utf8') }),
        );
        answer.once('error', reject);
      },
    );
    asked.once('error', reject);
    asked.end(body);
  });
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
