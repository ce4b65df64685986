/**
 * What the loopback server refuses. After each attack: nothing reached the program, and the answer holds neither the
 * window, nor a secret, nor a file from outside. The rules are those of two public guides: Host allow-list and
 * authentication (NCC Group, Singularity wiki, "Preventing DNS Rebinding"); Origin and Sec-Fetch-Site (OWASP Cheat Sheet
 * Series, Cross-Site Request Forgery Prevention).
 */
import { connect } from 'node:net';
import { networkInterfaces } from 'node:os';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import type { PlanDocument } from '../../../core/homing/document.ts';
import { type Answer, type Ask, ask, enter, raw } from './client.ts';
import { OUTSIDE, SCRIPT, type Serving, serve } from './serving.ts';

const LIMITS = { bytes: 2_000, milliseconds: 300 };

let s: Serving;
let old: Serving;
let heard = '';
/** A key that somebody entered with. */
let used = '';

beforeAll(async () => {
  old = await serve();
  await old.close();
  s = await serve({ limits: LIMITS });
  used = s.served.address.split('#')[1] ?? '';
  await enter(s.served.address);
});
afterAll(() => s.close());
beforeEach(() => {
  heard = '';
});
afterEach(() => {
  expect(s.reached).toEqual([]);
  const secrets = [s.cookie.split('=')[1] ?? '', s.header, s.served.address.split('#')[1] ?? ''];
  for (const secret of [...secrets, OUTSIDE, SCRIPT, 'the window']) expect(heard).not.toContain(secret);
});

const key = () => s.served.address.split('#')[1] ?? '';
const knock = (wrong: unknown, headers: Record<string, string> = {}) =>
  attack({
    method: 'POST',
    path: '/enter',
    headers: { 'content-type': 'application/json', ...headers },
    body: JSON.stringify({ key: wrong }),
  });

async function attack(asked: Ask): Promise<Answer> {
  const answer = await ask(s.served.port, asked);
  heard = `${JSON.stringify(answer.headers)}${answer.text}`;
  return answer;
}

/** Headers of a call as the window makes it; an attack leaves out or changes some. Undefined leaves one out. */
function callHeaders(change: Record<string, string | undefined>): Record<string, string> {
  const whole: Record<string, string | undefined> = {
    cookie: s.cookie,
    'x-whelpside': s.header,
    'content-type': 'application/json',
    origin: s.served.origin,
    'sec-fetch-site': 'same-origin',
    ...change,
  };
  return Object.fromEntries(Object.entries(whole).flatMap(([name, value]) => (value === undefined ? [] : [[name, value]])));
}
const callWith = (change: Record<string, string | undefined>, asked: Partial<Ask> = {}) =>
  attack({ method: 'POST', path: '/call/litter.all', body: '{}', headers: callHeaders(change), ...asked });

const port = () => String(s.served.port);

describe('another host name (a name made to mean 127.0.0.1)', () => {
  test.each([
    ['a foreign name', () => `evil.example:${port()}`],
    ['a foreign name without a port', () => 'evil.example'],
    ['a name that resolves here', () => `127.0.0.1.nip.example:${port()}`],
    ['our address as a sub-domain', () => `localhost.evil.example:${port()}`],
    ['our address without the port', () => '127.0.0.1'],
    ['our address with another port', () => '127.0.0.1:80'],
    ['another spelling of the address', () => `0x7f.1:${port()}`],
    ['the address of any interface', () => `0.0.0.0:${port()}`],
    ['the address with a dot at the end', () => `localhost.:${port()}`],
    ['a user part', () => `127.0.0.1:${port()}@evil.example`],
    ['IPv6 loopback', () => `[::1]:${port()}`],
    ['none', () => ''],
  ])('%s', async (_what, host) => {
    expect((await attack({ path: '/', headers: { host: host(), cookie: s.cookie } })).status).toBe(403);
    expect((await callWith({ host: host() })).status).toBe(403);
    expect((await knock(key(), { host: host() })).status).toBe(403);
    expect((await attack({ path: '/enter', headers: { host: host() } })).status).toBe(403);
  });

  test('two Host headers', async () => {
    heard = await raw(
      s.served.port,
      `GET / HTTP/1.1\r\nHost: 127.0.0.1:${port()}\r\nHost: evil.example\r\nCookie: ${s.cookie}\r\nConnection: close\r\n\r\n`,
    );
    expect(heard).toMatch(/^HTTP\/1\.1 400 /);
  });

  test('HTTP/1.0 without a Host', async () => {
    heard = await raw(s.served.port, `GET / HTTP/1.0\r\nCookie: ${s.cookie}\r\n\r\n`);
    expect(heard).toMatch(/^HTTP\/1\.1 403 /);
  });

  test('a whole address in place of a path', async () => {
    heard = await raw(
      s.served.port,
      `GET http://evil.example/ HTTP/1.1\r\nHost: 127.0.0.1:${port()}\r\nCookie: ${s.cookie}\r\nConnection: close\r\n\r\n`,
    );
    expect(heard).toMatch(/^HTTP\/1\.1 400 /);
  });
});

describe('another origin', () => {
  test.each([
    ['a foreign site', () => 'https://evil.example'],
    ['null, as from a sandboxed frame or a file', () => 'null'],
    ['another port of this machine', () => 'http://127.0.0.1:1'],
    ['another scheme', () => `https://127.0.0.1:${port()}`],
    ['the other of our two names', () => `http://localhost:${port()}`],
    ['ours with something after it', () => `${s.served.origin}.evil.example`],
    ['an empty one', () => ''],
  ])('a call from %s', async (_what, origin) => {
    const answer = await callWith({ origin: origin() });
    expect(answer.status).toBe(403);
    expect(answer.headers['access-control-allow-origin']).toBeUndefined();
  });

  test.each(['cross-site', 'same-site', 'Same-Origin', 'anything'])('Sec-Fetch-Site %s', async (site) => {
    expect((await callWith({ 'sec-fetch-site': site })).status).toBe(403);
    expect((await attack({ path: '/', headers: { cookie: s.cookie, 'sec-fetch-site': site } })).status).toBe(403);
    expect((await attack({ path: '/changed', headers: { cookie: s.cookie, 'sec-fetch-site': site } })).status).toBe(403);
    expect((await attack({ path: '/assets/app-1f.js', headers: { cookie: s.cookie, 'sec-fetch-site': site } })).status).toBe(403);
  });

  test.each(['iframe', 'frame', 'object', 'embed', 'fencedframe'])('the page into an %s', async (into) => {
    expect((await attack({ path: '/', headers: { cookie: s.cookie, 'sec-fetch-dest': into } })).status).toBe(403);
  });

  test('no page may be framed: the refusal itself says so', async () => {
    const answer = await attack({ path: '/' });
    expect(answer.headers['x-frame-options']).toBe('DENY');
    expect(answer.headers['content-security-policy']).toContain("frame-ancestors 'none'");
  });

  test('a preflight gets no leave', async () => {
    const answer = await attack({
      method: 'OPTIONS',
      path: '/call/litter.all',
      headers: {
        origin: 'https://evil.example',
        'access-control-request-method': 'POST',
        'access-control-request-headers': 'x-whelpside',
      },
    });
    expect(answer.status).toBe(403);
    expect(Object.keys(answer.headers).filter((name) => name.startsWith('access-control-'))).toEqual([]);
  });

  test('a preflight from our own origin gets none either', async () => {
    const answer = await attack({ method: 'OPTIONS', path: '/call/litter.all', headers: callHeaders({}) });
    expect(answer.status).toBe(405);
    expect(Object.keys(answer.headers).filter((name) => name.startsWith('access-control-'))).toEqual([]);
  });
});

describe('no key, no session, no secret', () => {
  test.each([
    ['no key', () => '/'],
    ['an empty key', () => '/?key='],
    ['the key where a server sees it', () => `/?key=${key()}`],
    ['the key as a path', () => `/${key()}`],
    ['the key in another place', () => `/index.html?key=${key()}`],
    ['the key behind the door', () => `/enter?key=${key()}`],
    ['the key of an earlier run', () => `/?key=${old.served.address.split('#')[1]}`],
  ])('%s in the address opens no session and says where to go', async (_what, path) => {
    const answer = await attack({ path: path() });
    expect(answer.status).toBe(403);
    expect(answer.headers['set-cookie']).toBeUndefined();
    expect(answer.text).toContain('Open the address that Whelpside printed last.');
  });

  test.each([
    ['an empty key', () => ''],
    ['a wrong key', () => 'A'.repeat(43)],
    ['a key cut short', () => key().slice(0, -1)],
    ['a key with more after it', () => `${key()}A`],
    ['a number', () => 7],
    ['a list', () => [key()]],
    ['a thing', () => ({ key: key() })],
    ['nothing', () => undefined],
    ['the session as the key', () => s.cookie.split('=')[1]],
    ['the page secret as the key', () => s.header],
    ['the key that was used already', () => used],
    ['the key of an earlier run', () => old.served.address.split('#')[1]],
  ])('%s at the door opens no session', async (_what, wrong) => {
    const answer = await knock(wrong());
    expect(answer.status).toBe(403);
    expect(answer.headers['set-cookie']).toBeUndefined();
    expect(answer.text).not.toContain('secret');
  });

  test('a thousand guesses at the door open none, and the key is still good', async () => {
    const good = key();
    for (let n = 0; n < 1000; n += 1) expect((await knock(`${good.slice(0, -4)}${String(n).padStart(4, '-')}`)).status).toBe(403);
    expect(key()).toBe(good);
  });

  test('a right key from another site opens none: a link elsewhere must not', async () => {
    for (const headers of [{ 'sec-fetch-site': 'cross-site' }, { origin: 'https://evil.example' }, { origin: 'null' }]) {
      const answer = await knock(key(), headers);
      expect(answer.status).toBe(403);
      expect(answer.headers['set-cookie']).toBeUndefined();
    }
  });

  test.each(['text/plain', 'application/x-www-form-urlencoded', 'application/json; charset=utf-8'])(
    'a right key as %s opens none',
    async (type) => {
      const answer = await knock(key(), { 'content-type': type });
      expect(answer.status).toBe(415);
      expect(answer.headers['set-cookie']).toBeUndefined();
    },
  );

  test.each(['PUT', 'DELETE', 'PATCH', 'HEAD', 'OPTIONS'])('a right key by %s opens none', async (method) => {
    const answer = await attack({ method, path: '/enter', headers: { 'content-type': 'application/json' } });
    expect(answer.status).toBe(405);
    expect(answer.headers['set-cookie']).toBeUndefined();
  });

  test('a huge key is not even read', async () => {
    expect((await knock('A'.repeat(100_000))).status).toBe(413);
  });

  test('a copied cookie alone reads no fact, hears no change and gets no secret', async () => {
    for (const path of ['/', '/index.html', '/enter', '/enter.js', '/assets/app-1f.css']) {
      const answer = await ask(s.served.port, { path, headers: { cookie: s.cookie } });
      expect(answer.text + JSON.stringify(answer.headers), path).not.toContain(s.header);
    }
    expect((await attack({ path: '/changed', headers: { cookie: s.cookie } })).status).toBe(403);
    expect((await callWith({ 'x-whelpside': undefined })).status).toBe(403);
    expect(
      (
        await attack({
          method: 'POST',
          path: '/enter',
          headers: { cookie: s.cookie, 'content-type': 'application/json' },
          body: '{}',
        })
      ).status,
    ).toBe(403);
  });

  const cookies: [string, () => string | undefined][] = [
    ['no cookie', () => undefined],
    ['an empty cookie', () => `${s.served.cookie.name}=`],
    ['a wrong cookie', () => `${s.served.cookie.name}=${'A'.repeat(43)}`],
    ['the cookie of an earlier run', () => `${s.served.cookie.name}=${old.cookie.split('=')[1]}`],
    ['the session under another port', () => `whelpside-1=${s.cookie.split('=')[1]}`],
    ['the session under a longer name', () => `x${s.cookie}`],
    ['the session with more after it', () => `${s.cookie}A`],
    ['the page secret as the session', () => `${s.served.cookie.name}=${s.header}`],
  ];
  test.each(cookies)('%s', async (_what, cookie) => {
    const value = cookie();
    const headers: Record<string, string> = value === undefined ? {} : { cookie: value };
    const id = s.slots.put({ title: OUTSIDE } as PlanDocument);
    for (const path of ['/', '/index.html', '/assets/app-1f.js', '/mark.svg', '/changed', `/paper/${id}`]) {
      expect((await attack({ path, headers })).status, path).toBe(403);
    }
    const answer = await callWith({ cookie: value });
    expect(answer.status).toBe(403);
    expect(JSON.parse(answer.text)).toEqual({ ok: false, error: { code: 'forbidden', message: 'no session' } });
    expect(s.slots.take(`/paper/${id}`)).not.toBeNull();
  });

  const secrets: [string, () => string | undefined][] = [
    ['no secret', () => undefined],
    ['an empty secret', () => ''],
    ['a wrong secret', () => 'A'.repeat(43)],
    ['the session as the secret', () => s.cookie.split('=')[1]],
    ['the key as the secret', () => s.served.address.split('#')[1]],
    ['the secret of an earlier run', () => old.header],
  ];
  test.each(secrets)('a call with a session and %s', async (_what, secret) => {
    const answer = await callWith({ 'x-whelpside': secret() });
    expect(answer.status).toBe(403);
    expect(JSON.parse(answer.text)).toEqual({ ok: false, error: { code: 'forbidden', message: 'no secret in the header' } });
  });

  test('two secrets, one of them right', async () => {
    const head = Object.entries(callHeaders({})).map(([name, value]) => `${name}: ${value}\r\n`);
    heard = await raw(
      s.served.port,
      `POST /call/litter.all HTTP/1.1\r\nHost: 127.0.0.1:${port()}\r\n${head.join('')}x-whelpside: other\r\nContent-Length: 2\r\nConnection: close\r\n\r\n{}`,
    );
    expect(heard).toMatch(/^HTTP\/1\.1 400 /);
  });
});

describe('methods', () => {
  test.each(['GET', 'HEAD', 'PUT', 'DELETE', 'PATCH'])('a call by %s changes nothing', async (method) => {
    const answer = await callWith({}, { method, ...(method === 'PUT' || method === 'PATCH' ? {} : { body: '' }) });
    expect(answer.status).toBe(405);
    expect(answer.headers.allow).toBe('POST');
  });

  test.each(['POST', 'PUT', 'DELETE', 'HEAD', 'TRACE'])('the page by %s', async (method) => {
    const answer = await attack({ method, path: '/', headers: { cookie: s.cookie, 'x-whelpside': s.header } });
    expect(answer.status).toBe(405);
    expect(answer.headers.allow).toBe('GET');
  });

  test('a tunnel', async () => {
    heard = await raw(s.served.port, `CONNECT evil.example:443 HTTP/1.1\r\nHost: 127.0.0.1:${port()}\r\n\r\n`);
    expect(heard).not.toMatch(/ 200 /);
  });

  test('a web socket', async () => {
    const answer = await attack({
      path: '/changed',
      headers: {
        origin: 'https://evil.example',
        connection: 'Upgrade',
        upgrade: 'websocket',
        'sec-websocket-version': '13',
        'sec-websocket-key': 'x',
      },
    });
    expect(answer.status).toBe(403);
  });
});

describe('bodies', () => {
  test.each([
    ['none', undefined],
    ['a form', 'application/x-www-form-urlencoded'],
    ['a form with parts', 'multipart/form-data; boundary=x'],
    ['plain text', 'text/plain'],
    ['JSON hidden behind text', 'text/plain; application/json'],
    ['JSON with a parameter', 'application/json; charset=utf-8'],
    ['another JSON', 'application/problem+json'],
    ['another spelling', 'Application/JSON'],
  ])('content type: %s', async (_what, type) => {
    expect((await callWith({ 'content-type': type })).status).toBe(415);
  });

  test('a packed body', async () => {
    expect((await callWith({ 'content-encoding': 'gzip' })).status).toBe(415);
  });

  test.each([
    ['nothing', ''],
    ['half an object', '{"a":'],
    ['script', 'alert(1)'],
    ['two values', '{}{}'],
    ['no UTF-8', new Uint8Array([0x7b, 0xff, 0xfe, 0x7d])],
  ])('not JSON: %s', async (_what, body) => {
    const answer = await callWith({}, { body });
    expect(answer.status).toBe(400);
    expect(JSON.parse(answer.text).error.code).toBe('bad-input');
  });

  test('a little too large: it is answered', async () => {
    const answer = await callWith({}, { body: JSON.stringify('x'.repeat(LIMITS.bytes)) });
    expect(answer.status).toBe(413);
    expect(JSON.parse(answer.text).error.code).toBe('too-large');
  });

  test('huge, as announced: it is not even read', async () => {
    const head = Object.entries(callHeaders({})).map(([name, value]) => `${name}: ${value}\r\n`);
    heard = await raw(
      s.served.port,
      `POST /call/litter.all HTTP/1.1\r\nHost: 127.0.0.1:${port()}\r\n${head.join('')}Content-Length: 99999999999\r\n\r\n{`,
    );
    expect(heard).toMatch(/^HTTP\/1\.1 413 [\s\S]*connection: close/i);
  });

  test('huge, in pieces without a length: it is hung up on', async () => {
    const head = Object.entries(callHeaders({})).map(([name, value]) => `${name}: ${value}\r\n`);
    const piece = `${(LIMITS.bytes * 10).toString(16)}\r\n${'x'.repeat(LIMITS.bytes * 10)}\r\n`;
    heard = await raw(
      s.served.port,
      `POST /call/litter.all HTTP/1.1\r\nHost: 127.0.0.1:${port()}\r\n${head.join('')}Transfer-Encoding: chunked\r\n\r\n${piece}`,
    );
    expect(heard).toMatch(/^HTTP\/1\.1 413 /);
  });

  test('slow: it is given up', async () => {
    const head = Object.entries(callHeaders({})).map(([name, value]) => `${name}: ${value}\r\n`);
    const began = performance.now();
    heard = await raw(
      s.served.port,
      `POST /call/litter.all HTTP/1.1\r\nHost: 127.0.0.1:${port()}\r\n${head.join('')}Content-Length: 20\r\n\r\n{"a`,
    );
    expect(heard).toMatch(/^HTTP\/1\.1 408 /);
    expect(performance.now() - began).toBeGreaterThan(LIMITS.milliseconds - 50);
    expect(performance.now() - began).toBeLessThan(LIMITS.milliseconds + 5_000);
  });

  test('broken off: nothing is called', async () => {
    const head = Object.entries(callHeaders({})).map(([name, value]) => `${name}: ${value}\r\n`);
    await new Promise<void>((resolve) => {
      const socket = connect(s.served.port, '127.0.0.1', () => {
        socket.write(
          `POST /call/litter.all HTTP/1.1\r\nHost: 127.0.0.1:${port()}\r\n${head.join('')}Content-Length: 2\r\n\r\n{`,
          () => socket.destroy(),
        );
      });
      socket.once('close', () => resolve());
    });
    expect((await attack({ path: '/nothing', headers: { cookie: s.cookie } })).status).toBe(404);
  });

  test('a body that asks for leave first', async () => {
    const answer = await callWith({ expect: '100-continue' });
    expect(answer.status).toBe(417);
  });

  test('two lengths that differ (a request smuggled in another)', async () => {
    heard = await raw(
      s.served.port,
      `POST /call/litter.all HTTP/1.1\r\nHost: 127.0.0.1:${port()}\r\nContent-Length: 2\r\nTransfer-Encoding: chunked\r\n\r\n0\r\n\r\nGET / HTTP/1.1\r\n\r\n`,
    );
    expect(heard).toMatch(/^HTTP\/1\.1 400 /);
    expect(heard).toContain("content-security-policy: default-src 'none'");
  });

  test('a second request behind a refused body is not read', async () => {
    heard = await raw(
      s.served.port,
      `POST / HTTP/1.1\r\nHost: evil.example\r\nContent-Length: 5000\r\n\r\nGET /mark.svg HTTP/1.1\r\nHost: 127.0.0.1:${port()}\r\nCookie: ${s.cookie}\r\n\r\n`,
    );
    expect(heard.match(/HTTP\/1\.1 /g)).toHaveLength(1);
    expect(heard).toMatch(/^HTTP\/1\.1 403 /);
  });

  test('not HTTP at all', async () => {
    heard = await raw(s.served.port, '\x16\x03\x01\x02\x00\x01\x00\x01\xfc\x03\x03');
    expect(heard).toMatch(/^HTTP\/1\.1 400 /);
  });
});

describe('names of operations', () => {
  test.each([
    '__proto__',
    'constructor',
    'toString',
    'hasOwnProperty',
    'valueOf',
    '__defineGetter__',
    'prototype',
    'litter.all/',
    'litter.all?x=1',
    'litter.all%00',
    'litter%2Eall',
    'LITTER.ALL',
    ' litter.all',
    '../call/litter.all',
    '',
  ])('“%s”', async (name) => {
    const answer = await callWith({}, { path: `/call/${name.replace(' ', '%20')}` });
    expect(answer.status).toBe(404);
    expect(JSON.parse(answer.text).error.code).toBe('unknown-operation');
  });
});

describe('paths', () => {
  test.each([
    '/../outside.txt',
    '/assets/../../outside.txt',
    '/./../outside.txt',
    '/%2e%2e/outside.txt',
    '/%2e%2e%2foutside.txt',
    '/..%2foutside.txt',
    '/%252e%252e%252foutside.txt',
    '/..\\outside.txt',
    '/..%5coutside.txt',
    '/%c0%ae%c0%ae/outside.txt',
    '/%uff0e%uff0e/outside.txt',
    '/....//outside.txt',
    '//outside.txt',
    '//127.0.0.1/outside.txt',
    '/assets/app-1f.js/../../../outside.txt',
    '/outside.txt%00.js',
    '/assets/app-1f.js%00',
    '/assets/app-1f.js.map',
    '/assets/',
    '/assets',
    '/link.txt',
    '/file:///etc/passwd',
    '/etc/passwd',
    '/assets/app-1f.js?x',
    '/assets/%61pp-1f.js',
    '/__proto__',
    '/constructor',
    '/paper/',
    '/paper/__proto__',
    `/paper/${'A'.repeat(32)}`,
    '/call',
  ])('%s', async (path) => {
    expect((await attack({ path, headers: { cookie: s.cookie } })).status).toBe(404);
  });
});

test('no other interface of this machine is listened on', async () => {
  const others = Object.values(networkInterfaces()).flatMap((list) =>
    (list ?? []).filter((i) => !i.internal && i.family === 'IPv4'),
  );
  if (others.length === 0) console.log('This machine has no other interface: only that ::1 is shut was checked.');
  for (const address of [...others.map((i) => i.address), '::1']) {
    const open = await new Promise<boolean>((resolve) => {
      const socket = connect({ port: s.served.port, host: address, timeout: 2_000 }, () => resolve(true));
      for (const event of ['error', 'timeout'] as const) socket.once(event, () => resolve(false));
      socket.once('close', () => resolve(false));
    });
    expect(open, address).toBe(false);
  }
});
