/** No network: the host listens on this computer only, and makes no connection of its own, whatever it is asked. */
import { spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { OPERATIONS, type OperationName } from '../../core/contract/operations.ts';
import type { Result } from '../../core/contract/result.ts';
import { type Dispatch, makeWorld } from '../contract/world.ts';
import { enter } from '../main/node/client.ts';
import { scratchFolder } from '../main/open.ts';
import { Inputs } from './inputs.ts';
import { Chance, report } from './numbers.ts';

const WATCH = new URL('./watch-network.ts', import.meta.url).href;
const CHILD = fileURLToPath(new URL('./serving-child.ts', import.meta.url));

function watched(args: readonly string[]) {
  const child = spawn(process.execPath, ['--import', WATCH, ...args], { stdio: ['ignore', 'pipe', 'pipe'] });
  let said = '';
  child.stderr.on('data', (chunk: Buffer) => (said += chunk.toString()));
  const gone = new Promise<void>((resolve) => child.once('close', () => resolve()));
  return { child, gone, network: () => said.split('\n').filter((line) => line.startsWith('NETWORK')) };
}

it('the watch sees a connection, a name and a datagram', async () => {
  const script = `
    require('node:net').connect(9, '127.0.0.1').on('error', () => {});
    require('node:dns').lookup('localhost', () => {});
    const socket = require('node:dgram').createSocket('udp4');
    socket.send('x', 9, '127.0.0.1', () => socket.close());`;
  const { gone, network } = watched(['-e', script]);
  await gone;
  for (const what of ['connect', 'lookup', 'send'])
    expect(
      network().some((line) => line.includes(what)),
      what,
    ).toBe(true);
});

it('the host that does all that it can makes no connection', async () => {
  const { folder, remove } = scratchFolder();
  const { child, gone, network } = watched([CHILD, folder]);
  const address = await new Promise<string>((resolve) =>
    child.stdout.once('data', (chunk: Buffer) => resolve(chunk.toString().trim())),
  );
  expect(new URL(address).hostname).toBe('127.0.0.1');
  const { origin, headers } = await enter(address);
  const dispatch: Dispatch = async (name, input) => {
    const answer = await fetch(`${origin}/call/${name}`, { method: 'POST', headers, body: JSON.stringify(input) ?? '' });
    return (await answer.json()) as Result<unknown>;
  };
  const world = await makeWorld(dispatch);
  const inputs = new Inputs(new Chance(9), () => ({
    litterId: [world.litter.id],
    puppyId: [world.puppies[0]?.id],
    folder: ['none'],
  }));
  let asked = 0;
  for (const name of Object.keys(OPERATIONS) as OperationName[]) {
    for (let n = 0; n < 3; n += 1) {
      try {
        await dispatch(name, inputs.of(OPERATIONS[name].input));
        asked += 1;
      } catch {
        // An input that can't be written as JSON can't be sent.
      }
    }
  }
  expect(asked).toBeGreaterThan(60);
  child.kill('SIGKILL');
  await gone;
  // To listen on 127.0.0.1, Node "looks up" that number, which asks nobody.
  expect(network().filter((line) => !line.startsWith('NETWORK lookup ["127.0.0.1"'))).toEqual([]);
  report({ what: 'calls watched for network traffic', rounds: asked, lost: 0 });
  remove();
}, 60_000);
