/** Operations that take large inputs get them over the loopback host; the others don't. */
import { afterAll, beforeAll, expect, it } from 'vitest';
import { OPERATIONS } from '../../../core/contract/operations.ts';
import { ask } from './client.ts';
import { type Serving, serve } from './serving.ts';

let serving: Serving;
beforeAll(async () => {
  serving = await serve();
});
afterAll(() => serving.close());

const send = (name: string, bytes: number) => {
  const { served, cookie, header } = serving;
  const headers = { cookie, 'x-whelpside': header, 'content-type': 'application/json' };
  return ask(served.port, { method: 'POST', path: `/call/${name}`, headers, body: JSON.stringify('x'.repeat(bytes)) });
};

it('lets a table of weights through that is larger than a call may be elsewhere', async () => {
  expect((await send('records.import', 1_500_000)).status).toBe(200);
  expect((await send('growth.record', 1_500_000)).status).toBe(413);
  expect(serving.reached.map(([name]) => name)).toEqual(['records.import']);
});

it('stops a table that is too large even for that', async () => {
  expect((await send('records.import', OPERATIONS['records.import'].largest ?? 0)).status).toBe(413);
});
