/** Drives a host that will be killed: starts it, enters as a window does, calls it, and never takes a lost answer for one. */
import { type ChildProcess, spawn } from 'node:child_process';
import { execPath } from 'node:process';
import { fileURLToPath } from 'node:url';
import { type InputOf, OPERATIONS, type OperationName, type OutputOf } from '../../core/contract/operations.ts';
import type { Result } from '../../core/contract/result.ts';
import { enter } from '../main/node/client.ts';

const CHILD = fileURLToPath(new URL('./serving-child.ts', import.meta.url));

/** The host is gone: what was asked may have been done or not. */
export class Gone extends Error {}

export class Killable {
  readonly #child: ChildProcess;
  readonly #ended: Promise<void>;
  #errors = '';
  #origin = '';
  #headers: Record<string, string> = {};

  constructor(folder: string) {
    this.#child = spawn(execPath, [CHILD, folder], { stdio: ['ignore', 'pipe', 'pipe'] });
    this.#child.stderr?.on('data', (chunk: Buffer) => (this.#errors += chunk.toString()));
    this.#ended = new Promise((resolve) => this.#child.once('close', () => resolve()));
  }

  /** Ends it as a power switch does. Throws when it had ended by itself. */
  async kill(): Promise<void> {
    const endedItself = this.#child.exitCode !== null;
    this.#child.kill('SIGKILL');
    await this.#ended;
    if (endedItself) throw new Error(`the host ended by itself: ${this.#errors}`);
  }

  async enter(): Promise<void> {
    const address = await this.#address();
    const entered = await enter(address).catch(gone);
    this.#origin = entered.origin;
    this.#headers = entered.headers;
  }

  /** An answer that came whole. Throws Gone when it did not, and Error when it is a refusal. */
  async call<N extends OperationName>(name: N, input: InputOf<N>): Promise<OutputOf<N>> {
    const answer = await this.#fetch(`${this.#origin}/call/${name}`, {
      method: 'POST',
      headers: this.#headers,
      body: JSON.stringify(input),
    });
    const result = (await answer.json().catch(gone)) as Result<unknown>;
    if (!result.ok) throw new Error(`${name}: ${JSON.stringify(result.error)}`);
    return OPERATIONS[name].output.parse(result.value) as OutputOf<N>;
  }

  #address(): Promise<string> {
    return new Promise((resolve, reject) => {
      let out = '';
      this.#child.stdout?.on('data', (chunk: Buffer) => {
        out += chunk.toString();
        if (out.includes('\n')) resolve(out.trim());
      });
      this.#child.once('close', () => reject(new Gone('before its address')));
    });
  }

  async #fetch(url: string, init: RequestInit): Promise<Response> {
    return await fetch(url, init).catch(gone);
  }
}

function gone(error: unknown): never {
  throw new Gone('the host does not answer', { cause: error });
}
