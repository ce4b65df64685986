/** The contract over the loopback host, by fetch, with the cookie and the secret that the window has. */
import { rmSync } from 'node:fs';
import { join } from 'node:path';
import type { Result } from '../../core/contract/result.ts';
import { readWindowFiles } from '../../main/hosting/files.ts';
import { PaperSlots } from '../../main/hosting/slots.ts';
import { createServer } from '../../main/node/server.ts';
import { enter } from '../main/node/client.ts';
import { makeWindowFolder } from '../main/node/serving.ts';
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

  const { headers } = await enter(server.address);
  return {
    dispatch: async (name, input) => {
      const answer = await fetch(`${server.origin}/call/${name}`, {
        method: 'POST',
        headers,
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
