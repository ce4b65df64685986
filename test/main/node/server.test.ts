/** The loopback server as the window uses it. Refusals are in `attacks.test.ts`. */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Result } from '../../../core/contract/result.ts';
import type { PlanDocument } from '../../../core/homing/document.ts';
import { ask } from './client.ts';
import { makeWindowFolder, PAGE, SCRIPT, type Serving, serve } from './serving.ts';

let s: Serving;
beforeAll(async () => {
  s = await serve();
});
afterAll(() => s.close());

const get = (path: string) => ask(s.served.port, { path, headers: { cookie: s.cookie, 'sec-fetch-site': 'same-origin' } });
const call = (name: string, body: string) =>
  ask(s.served.port, {
    method: 'POST',
    path: `/call/${name}`,
    headers: {
      cookie: s.cookie,
      'x-whelpside': s.header,
      'content-type': 'application/json',
      origin: s.served.origin,
      'sec-fetch-site': 'same-origin',
    },
    body,
  });

const keyOf = (address: string) => address.split('#')[1] ?? '';
const knock = (serving: Serving, key: string, headers: Record<string, string> = {}) =>
  ask(serving.served.port, {
    method: 'POST',
    path: '/enter',
    headers: { 'content-type': 'application/json', ...headers },
    body: JSON.stringify({ key }),
  });

describe('entering', () => {
  test('the door is open to anybody and holds nothing', async () => {
    const door = await ask(s.served.port, { path: '/enter', headers: { 'sec-fetch-site': 'cross-site' } });
    expect(door.status).toBe(200);
    expect(door.headers['set-cookie']).toBeUndefined();
    const script = await ask(s.served.port, { path: '/enter.js', headers: { 'sec-fetch-site': 'same-origin' } });
    expect(script.headers['content-type']).toBe('text/javascript; charset=utf-8');
    for (const secret of [keyOf(s.served.address), s.header, s.cookie.split('=')[1] ?? ''])
      expect(door.text + script.text).not.toContain(secret);
  });

  test('the printed key opens a session for this host only, and is never part of what is asked for', async () => {
    const answer = await knock(s, keyOf(s.served.address), { 'sec-fetch-site': 'same-origin', origin: s.served.origin });
    expect(answer.status).toBe(200);
    expect(JSON.parse(answer.text)).toEqual({ secret: s.header });
    expect(answer.headers['set-cookie']).toEqual([
      expect.stringMatching(/^whelpside-\d+=[A-Za-z0-9_-]{43}; Path=\/; HttpOnly; SameSite=Strict$/),
    ]);
    expect(answer.headers['cache-control']).toBe('no-store');
    expect(new URL(s.served.address).pathname + new URL(s.served.address).search).toBe('/enter');
  });

  test('a key is good once, and then there is another', async () => {
    const first = keyOf(s.served.address);
    expect((await knock(s, first)).status).toBe(200);
    const again = await knock(s, first);
    expect(again.status).toBe(403);
    expect(again.headers['set-cookie']).toBeUndefined();
    expect(keyOf(s.served.address)).not.toBe(first);
    expect((await knock(s, keyOf(s.served.address))).status).toBe(200);
  });

  test('the address is of 127.0.0.1 and its key has at least 128 bits, new for each run', async () => {
    expect(s.served.address).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/enter#[A-Za-z0-9_-]{43}$/);
    const other = await serve();
    expect(keyOf(other.served.address)).not.toBe(keyOf(s.served.address));
    expect(other.cookie.split('=')[1]).not.toBe(s.cookie.split('=')[1]);
    expect(other.header).not.toBe(s.header);
    await other.close();
  });

  test('localhost is the same host', async () => {
    const answer = await ask(s.served.port, { path: '/', headers: { host: `localhost:${s.served.port}`, cookie: s.cookie } });
    expect(answer.status).toBe(200);
  });

  test('our cookie is found among those of other programs on this host', async () => {
    const answer = await ask(s.served.port, { path: '/', headers: { cookie: `a=b; ${s.cookie}; whelpside-1=x` } });
    expect(answer.status).toBe(200);
  });
});

describe('the window', () => {
  test('the page carries no secret, and a nonce that is new for each answer and named by the policy', async () => {
    const [first, second] = [await get('/'), await get('/index.html')];
    const nonceOf = (text: string) => /<meta property="csp-nonce" nonce="([A-Za-z0-9_-]{22})">/.exec(text)?.[1] ?? 'none';
    for (const answer of [first, second]) {
      expect(answer.status).toBe(200);
      expect(answer.headers['content-type']).toBe('text/html; charset=utf-8');
      expect(answer.headers['content-security-policy']).toContain(`style-src 'self' 'nonce-${nonceOf(answer.text)}';`);
      expect(answer.text).not.toContain(s.header);
    }
    expect(nonceOf(first.text)).not.toBe(nonceOf(second.text));
    expect(first.text.replace(/<meta [^>]*>/g, '')).toBe(PAGE);
  });

  test.each([
    ['/assets/app-1f.js', 'text/javascript; charset=utf-8', 'private, max-age=31536000, immutable'],
    ['/assets/app-1f.css', 'text/css; charset=utf-8', 'private, max-age=31536000, immutable'],
    ['/assets/face-1f.woff2', 'font/woff2', 'private, max-age=31536000, immutable'],
    ['/mark.svg', 'image/svg+xml', 'no-store'],
  ])('%s is %s', async (path, type, caching) => {
    const answer = await get(path);
    expect(answer.status).toBe(200);
    expect(answer.headers['content-type']).toBe(type);
    expect(answer.headers['cache-control']).toBe(caching);
    if (path.endsWith('.js')) expect(answer.text).toBe(SCRIPT);
  });

  test('every answer carries the whole set of headers, and none lets another origin in', async () => {
    const unknown = await ask(s.served.port, { path: '/' });
    const wrongHost = await ask(s.served.port, { path: '/', headers: { host: 'example.org' } });
    const answers = [
      await get('/'),
      await get('/mark.svg'),
      await get('/nothing'),
      await call('litter.all', '{}'),
      await call('no.such', '{}'),
      await ask(s.served.port, { path: '/enter' }),
      await knock(s, 'none'),
      unknown,
      wrongHost,
    ];
    for (const { headers, status } of answers) {
      const policy = headers['content-security-policy'];
      for (const part of [
        "default-src 'none'",
        "script-src 'self'",
        "img-src 'self' blob: data:",
        "font-src 'self'",
        "connect-src 'self'",
        "frame-ancestors 'none'",
        "base-uri 'none'",
        "form-action 'none'",
        "object-src 'none'",
      ]) {
        expect(String(policy).split('; '), `${status}`).toContain(part);
      }
      expect(String(policy)).not.toMatch(/unsafe|\*|http/);
      expect(headers['x-content-type-options']).toBe('nosniff');
      expect(headers['x-frame-options']).toBe('DENY');
      expect(headers['referrer-policy']).toBe('no-referrer');
      expect(headers['cross-origin-opener-policy']).toBe('same-origin');
      expect(headers['cross-origin-resource-policy']).toBe('same-origin');
      expect(headers['permissions-policy']).toMatch(/^hid=\(self\), serial=\(self\), (?:[a-z-]+=\(\)(?:, |$))+$/);
      expect(Object.keys(headers).filter((name) => name.startsWith('access-control-'))).toEqual([]);
    }
  });
});

describe('calls', () => {
  test('name and input reach the program, its result comes back', async () => {
    const before = s.reached.length;
    const answer = await call('growth.readings', '{"litterId":"é-12345678"}');
    expect(answer.status).toBe(200);
    expect(answer.headers['content-type']).toBe('application/json');
    expect(answer.headers['cache-control']).toBe('no-store');
    expect(JSON.parse(answer.text)).toEqual({ ok: true, value: { heard: { litterId: 'é-12345678' } }, changed: [] });
    expect(s.reached.slice(before)).toEqual([['growth.readings', { litterId: 'é-12345678' }]]);
  });

  test('a connection serves many calls', async () => {
    const answers = await Promise.all(Array.from({ length: 20 }, (_, n) => call('litter.all', `{"n":${n}}`)));
    expect(answers.map((a) => JSON.parse(a.text).value.heard.n)).toEqual(Array.from({ length: 20 }, (_, n) => n));
  });
});

describe('changes', () => {
  test('every open tab hears what changed, and a closed one is forgotten', async () => {
    const headers = { cookie: s.cookie, 'x-whelpside': s.header, 'sec-fetch-site': 'same-origin' };
    const listen = async () => {
      const stop = new AbortController();
      const answer = await fetch(`${s.served.origin}/changed`, { headers, signal: stop.signal });
      expect(answer.headers.get('content-type')).toBe('text/event-stream');
      const reader = answer.body?.pipeThrough(new TextDecoderStream()).getReader();
      const hear = async (until: string): Promise<string> => {
        let heard = '';
        while (!heard.includes(until)) heard += (await reader?.read())?.value ?? '';
        return heard;
      };
      return { hear, stop: () => stop.abort() };
    };
    const [first, second] = [await listen(), await listen()];
    s.served.tell(['litters', 'records']);
    for (const tab of [first, second]) expect(await tab.hear('records')).toContain('data: ["litters","records"]\n\n');
    first.stop();
    s.served.tell(['rules']);
    expect(await second.hear('rules')).toContain('data: ["rules"]\n\n');
    second.stop();
  });

  test('closing the server ends the streams', async () => {
    const own = await serve();
    const answer = await fetch(`${own.served.origin}/changed`, { headers: { cookie: own.cookie, 'x-whelpside': own.header } });
    const heard = answer.text();
    await own.close();
    expect(await heard.catch(() => 'broken off')).toMatch(/^retry: 2000|broken off/);
    await expect(ask(own.served.port, { path: '/' })).rejects.toThrow(/ECONNREFUSED/);
  });
});

describe('papers', () => {
  test('a document is handed over once', async () => {
    const document = { title: 'a plan' } as PlanDocument;
    const id = s.slots.put(document);
    const first = await get(`/paper/${id}`);
    expect(first.status).toBe(200);
    expect(first.headers['content-type']).toBe('application/json');
    expect(first.headers['cache-control']).toBe('no-store');
    expect(JSON.parse(first.text)).toEqual(document);
    expect((await get(`/paper/${id}`)).status).toBe(404);
  });
});

test('two servers cannot have one port, and Node says which error', async () => {
  const { createServer } = await import('../../../main/node/server.ts');
  const { readWindowFiles } = await import('../../../main/hosting/files.ts');
  const files = readWindowFiles(`${makeWindowFolder()}/window`);
  const dispatch = async (): Promise<Result<unknown>> => ({ ok: true, value: {}, changed: [] });
  const second = createServer({ dispatch, files, slots: s.slots, port: s.served.port });
  await expect(second).rejects.toMatchObject({ code: 'EADDRINUSE' });
});
