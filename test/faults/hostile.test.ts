/**
 * Hostile requests, generated: every kind of request that the loopback server answers, changed in one way or in two, by each
 * of the ways that a page elsewhere, a name made to mean this computer, a neighbour on it, or a thief of a cookie or of a used
 * key can change it. None of them reaches the program, and no answer holds a fact, a secret, the window or a file.
 */
import { afterAll, beforeAll, beforeEach, expect, it } from 'vitest';
import { type Answer, type Ask, ask, enter } from '../main/node/client.ts';
import { OUTSIDE, SCRIPT, type Serving, serve } from '../main/node/serving.ts';
import { Chance, report, rounds } from './numbers.ts';

const PAIRS = rounds(2000, 300);
const chance = new Chance(283);

let s: Serving;
let old: Serving;
let used = '';
beforeAll(async () => {
  old = await serve();
  await old.close();
  s = await serve({ limits: { bytes: 2_000, milliseconds: 500 } });
  used = keyNow();
  await enter(s.served.address);
});
afterAll(() => s.close());
beforeEach(() => {
  s.slots.put({ title: OUTSIDE } as never);
});

const keyNow = () => s.served.address.split('#')[1] ?? '';
const port = () => s.served.port;

interface Request {
  readonly what: string;
  readonly method: string;
  readonly path: string;
  readonly headers: Readonly<Record<string, string>>;
  readonly body: string;
}

/** What the server answers to the window; each is good as it stands. */
function good(): Request[] {
  const own = { cookie: s.cookie, origin: s.served.origin, 'sec-fetch-site': 'same-origin' };
  const call = { ...own, 'x-whelpside': s.header, 'content-type': 'application/json' };
  const get = (path: string, headers: Record<string, string> = own): Request => ({
    what: path,
    method: 'GET',
    path,
    headers,
    body: '',
  });
  return [
    get('/'),
    get('/assets/app-1f.js'),
    get('/changed', call),
    get('/paper/0'),
    { what: 'call', method: 'POST', path: '/call/litter.all', headers: call, body: '{}' },
    { what: 'command', method: 'POST', path: '/call/growth.record', headers: call, body: '{"puppyId":"a"}' },
    {
      what: 'door',
      method: 'POST',
      path: '/enter',
      headers: { 'content-type': 'application/json', origin: s.served.origin, 'sec-fetch-site': 'same-origin' },
      body: JSON.stringify({ key: 'A'.repeat(43) }),
    },
  ];
}

type Way = readonly [what: string, change: (asked: Request) => Request | null];

const withHeader =
  (name: string, value: () => string | null) =>
  (asked: Request): Request => {
    const { [name]: _, ...others } = asked.headers;
    const text = value();
    return { ...asked, headers: text === null ? others : { ...others, [name]: text } };
  };
const onlyFor = (test: (asked: Request) => boolean, change: (asked: Request) => Request) => (asked: Request) =>
  test(asked) ? change(asked) : null;
const needsCookie = (asked: Request) => asked.what !== 'door';
const needsSecret = (asked: Request) => 'x-whelpside' in asked.headers;
const hasBody = (asked: Request) => asked.method === 'POST';

/** Each alone is enough to be refused. */
function ways(): Way[] {
  const hosts = [
    `evil.example:${port()}`,
    'evil.example',
    `127.0.0.1.nip.example:${port()}`,
    `localhost.evil.example:${port()}`,
    '127.0.0.1',
    '127.0.0.1:80',
    `0x7f.1:${port()}`,
    `2130706433:${port()}`,
    `0.0.0.0:${port()}`,
    `localhost.:${port()}`,
    `127.0.0.1:${port()}@evil.example`,
    `[::1]:${port()}`,
    `LOCALHOST:${port()}.`,
    '',
  ];
  const origins = [
    'https://evil.example',
    'null',
    'http://127.0.0.1:1',
    `https://127.0.0.1:${port()}`,
    `http://localhost:${port()}`,
    `${s.served.origin}.evil.example`,
    `${s.served.origin}/`,
    'file://',
    '',
  ];
  const sites = ['cross-site', 'same-site', 'Same-Origin', 'anything', ''];
  const session = s.cookie.split('=')[1] ?? '';
  const name = s.served.cookie.name;
  const cookies = [
    null,
    '',
    `${name}=`,
    `${name}=${'A'.repeat(43)}`,
    `${name}=${old.cookie.split('=')[1]}`,
    `whelpside-1=${session}`,
    `x${s.cookie}`,
    `${s.cookie}A`,
    `${name}=${s.header}`,
    `${name}="${session}"`,
    `${name.toUpperCase()}=${session}`,
  ];
  const secrets = [
    null,
    '',
    'A'.repeat(43),
    session,
    used,
    old.header,
    s.header.slice(0, -1),
    `${s.header}A`,
    s.header.toLowerCase(),
  ];
  const types = [
    'text/plain',
    'application/x-www-form-urlencoded',
    'multipart/form-data; boundary=x',
    'application/json; charset=utf-8',
    'application/problem+json',
    'text/plain; application/json',
    '',
  ];
  const bodies = ['', '{', '{"a":1}{"b":2}', '\ufffe', 'x'.repeat(2_001), 'x'.repeat(17_000), '['.repeat(1_900)];
  const paths = [
    '/call/',
    '/call/__proto__',
    '/call/constructor',
    '/call/litter.all/',
    '/call/litter.all?x=1',
    '/call/LITTER.ALL',
    '/call//litter.all',
    '/call/..%2flitter.all',
    '/../outside.txt',
    '/..%2foutside.txt',
    '/%2e%2e/outside.txt',
    '/link.txt',
    '/assets/../../outside.txt',
    '/assets/app-1f.js.map',
    '/assets\\..\\..\\outside.txt',
    '/etc/passwd',
    '//evil.example/',
    `/?key=${keyNow()}`,
    `/paper/${'A'.repeat(43)}`,
    '/whelpside.sqlite',
  ];
  const methods = ['PUT', 'DELETE', 'PATCH', 'HEAD', 'OPTIONS', 'TRACE', 'PROPFIND'];
  const dests = ['iframe', 'frame', 'object', 'embed', 'fencedframe'];
  const frames = (dest: string): Way => [`dest ${dest}`, withHeader('sec-fetch-dest', () => dest)];
  return [
    ...hosts.map((host): Way => [`host ${host}`, withHeader('host', () => host)]),
    ...origins.map((origin): Way => [`origin ${origin}`, withHeader('origin', () => origin)]),
    ...sites.map((site): Way => [`site ${site}`, withHeader('sec-fetch-site', () => site)]),
    ...dests.map(frames),
    ...cookies.map(
      (cookie): Way => [
        `cookie ${cookie}`,
        onlyFor(
          needsCookie,
          withHeader('cookie', () => cookie),
        ),
      ],
    ),
    ...secrets.map(
      (secret): Way => [
        `secret ${secret}`,
        onlyFor(
          needsSecret,
          withHeader('x-whelpside', () => secret),
        ),
      ],
    ),
    ...types.map(
      (type): Way => [
        `type ${type}`,
        onlyFor(
          hasBody,
          withHeader('content-type', () => type),
        ),
      ],
    ),
    [
      'encoding',
      onlyFor(
        hasBody,
        withHeader('content-encoding', () => 'gzip'),
      ),
    ],
    ...bodies.map((body): Way => [`body of ${body.length}`, onlyFor(hasBody, (asked) => ({ ...asked, body }))]),
    ...paths.map((path): Way => [`path ${path}`, (asked) => ({ ...asked, path })]),
    ...methods.map((method): Way => [`method ${method}`, (asked) => ({ ...asked, method, body: '' })]),
    [
      'a used key',
      onlyFor(
        (asked) => asked.what === 'door',
        (asked) => ({ ...asked, body: JSON.stringify({ key: used }) }),
      ),
    ],
    [
      'a key of another run',
      onlyFor(
        (asked) => asked.what === 'door',
        (asked) => ({ ...asked, body: JSON.stringify({ key: old.served.address.split('#')[1] }) }),
      ),
    ],
    [
      'a list of keys',
      onlyFor(
        (asked) => asked.what === 'door',
        (asked) => ({ ...asked, body: JSON.stringify({ key: [keyNow()] }) }),
      ),
    ],
    [
      'the good key, from another site',
      onlyFor(
        (asked) => asked.what === 'door',
        (asked) => ({ ...withHeader('sec-fetch-site', () => 'cross-site')(asked), body: JSON.stringify({ key: keyNow() }) }),
      ),
    ],
    [
      'the good key, as a form',
      onlyFor(
        (asked) => asked.what === 'door',
        (asked) => ({ ...withHeader('content-type', () => 'text/plain')(asked), body: JSON.stringify({ key: keyNow() }) }),
      ),
    ],
  ];
}

/** What is known to a neighbour who was let in; null when it was refused. The door itself may be come to: it holds nothing. */
async function letIn(asked: Request): Promise<string | null> {
  const reached = s.reached.length;
  const { method, path, headers, body } = asked;
  const request: Ask = { method, path, headers, ...(body === '' ? {} : { body }) };
  // A server that hangs up has let nobody in.
  const answer: Answer = await ask(port(), request).catch(() => ({ status: 0, headers: {}, text: '' }));
  if (s.reached.length > reached) return 'it reached the program';
  const heard = `${JSON.stringify(answer.headers)}${answer.text}`;
  const kept = [s.cookie.split('=')[1] ?? '', s.header, keyNow(), OUTSIDE, SCRIPT, 'the window'];
  if (kept.some((text) => heard.includes(text))) return 'the answer holds what it must not';
  if (answer.headers['set-cookie'] !== undefined || Object.keys(answer.headers).some((h) => h.startsWith('access-control')))
    return 'it was given leave';
  return answer.status >= 200 && answer.status < 300 ? `it was answered ${answer.status}` : null;
}

it('what the window asks is answered: else the refusals below would prove nothing', async () => {
  const reached = s.reached.length;
  for (const { what, method, path, headers, body } of good().filter((g) => !['door', '/paper/0', '/changed'].includes(g.what)))
    expect((await ask(port(), { method, path, headers, ...(body === '' ? {} : { body }) })).status, what).toBe(200);
  expect(s.reached.length).toBe(reached + 2);
});

it(`every request changed in one way, and ${PAIRS} changed in two: nobody is let in`, async () => {
  const inside: string[] = [];
  let tried = 0;
  const attack = async (what: string, asked: Request | null) => {
    if (asked === null) return;
    tried += 1;
    const got = await letIn(asked);
    if (got !== null) inside.push(`${asked.what} with ${what}: ${got}`);
  };
  for (const [what, change] of ways()) for (const asked of good()) await attack(what, change(asked));
  for (let n = 0; n < PAIRS; n += 1) {
    const [[one, first], [two, second]] = [chance.pick(ways()), chance.pick(ways())];
    const asked = first(chance.pick(good()));
    await attack(`${one}, ${two}`, asked === null ? null : second(asked));
  }
  expect(tried).toBeGreaterThan(500);
  report({ what: 'hostile requests', rounds: tried, letIn: inside.length, refused: tried - inside.length });
  expect(inside).toEqual([]);
}, 600_000);
