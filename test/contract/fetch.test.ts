/** The contract over the loopback host, by fetch, with the cookie and the secret that the window has. */
import { rmSync } from 'node:fs';
import { join } from 'node:path';
import type { Result } from '../../core/contract/result.ts';
import { readWindowFiles } from '../../main/hosting/files.ts';
import { PaperSlots } from '../../main/hosting/slots.ts';
import { createServer } from '../../main/node/server.ts';
import { makeWindowFolder, secretIn } from '../main/node/serving.ts';
import { openOn, scratchFolder } from '../main/open.ts';
import { contractSuite } from './suite.ts';

contractSuite('the loopback host, by fetch', async () => {
  const { folder, remove } = scratchFolder();
  const window = makeWindowFolder();
  const program = openOn(folder);
  const slots = new PaperSlots(() => performance.now());
  const server = await createServer({
    dispatch: program.dispatch,
    files: readWindowFiles(join(window, 'window')),
    slots,
    port: 0,
  });

  const entered = await fetch(server.address, { redirect: 'manual' });
  const cookie = entered.headers.getSetCookie()[0]?.split(';')[0] ?? '';
  const secret = secretIn(await (await fetch(`${server.origin}/`, { headers: { cookie } })).text());
  return {
    dispatch: async (name, input) => {
      const answer = await fetch(`${server.origin}/call/${name}`, {
        method: 'POST',
        headers: { cookie, 'content-type': 'application/json', 'x-whelpside': secret },
        body: JSON.stringify(input),
      });
      return (await answer.json()) as Result<unknown>;
    },
    close: async () => {
      await server.close();
      program.close();
      remove();
      rmSync(window, { recursive: true, force: true });
    },
  };
});
