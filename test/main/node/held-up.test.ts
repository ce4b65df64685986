/** Connections that browsers open ahead, and a host that is held up while a request lies before it. */
import { connect, type Socket } from 'node:net';
import { setTimeout as later } from 'node:timers/promises';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type Serving, serve } from './serving.ts';

const HEAD_MS = 400;
/** Node looks for connections that are open too long each two seconds. */
const LOOK_MS = 2_000;

let s: Serving;
let whileAnswering = () => {};
beforeAll(async () => {
  s = await serve({ headMilliseconds: HEAD_MS, whileAnswering: () => whileAnswering() });
});
afterAll(() => s.close());

async function opened(): Promise<{ socket: Socket; heard: () => string; closed: Promise<void> }> {
  const socket = connect(s.served.port, '127.0.0.1');
  let heard = '';
  socket.on('data', (part) => {
    heard += part.toString();
  });
  socket.on('error', () => undefined);
  const closed = new Promise<void>((resolve) => socket.once('close', () => resolve()));
  await new Promise<void>((resolve) => socket.once('connect', () => resolve()));
  await later(50);
  return { socket, heard: () => heard, closed };
}

test('a connection that nothing comes through is closed without a word', async () => {
  const { heard, closed } = await opened();
  await closed;
  expect(heard()).toBe('');
});

function callOf(name: string): string {
  const lines = [
    `POST /call/${name} HTTP/1.1`,
    `Host: 127.0.0.1:${s.served.port}`,
    `Cookie: ${s.cookie}`,
    `X-Whelpside: ${s.header}`,
    `Origin: ${s.served.origin}`,
    'Sec-Fetch-Site: same-origin',
    'Content-Type: application/json',
    'Content-Length: 2',
    'Connection: close',
  ];
  return `${lines.join('\r\n')}\r\n\r\n{}`;
}

test('a request that comes while the host is busy with another one is answered, however long that takes', async () => {
  const other = await opened();
  const behind = await opened();
  whileAnswering = () => {
    whileAnswering = () => {};
    behind.socket.write(callOf('litter.all'));
    const until = performance.now() + HEAD_MS + LOOK_MS;
    while (performance.now() < until);
  };
  other.socket.write(callOf('freezer.demand'));
  await Promise.all([other.closed, behind.closed]);
  expect(other.heard()).toMatch(/^HTTP\/1\.1 200 /);
  expect(behind.heard()).toMatch(/^HTTP\/1\.1 200 /);
  expect(s.reached.map(([name]) => name)).toEqual(['freezer.demand', 'litter.all']);
});
