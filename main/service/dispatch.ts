/** The one way in: name and input are checked, the handler runs, its output is checked, and the answer is a Result. */
import type { z } from 'zod';
import { isOperation, OPERATIONS, type OperationName } from '../../core/contract/operations.ts';
import { type ContractError, ContractFailure, type ErrorCode, type Result, type Tag } from '../../core/contract/result.ts';
import { type StoreCode, storeCodeOf } from '../store/fault.ts';
import type { Written } from '../store/journal.ts';
import type { Handlers } from './handlers.ts';

/** Never throws; checks input and output schemas. */
export type Dispatch = (name: string, input: unknown) => Promise<Result<unknown>>;

export interface DispatchHooks {
  /** Before a command runs. */
  readonly beforeCommand: () => void;
  /** After a command or an act was done, before it is answered. */
  readonly afterwards: () => void;
  readonly onChanged: (tags: readonly Tag[]) => void;
  /** Hears of errors that no person can mend: for the developer's log. */
  readonly onFault: (operation: string, error: unknown) => void;
}

export function dispatcher(handlers: Handlers, hooks: DispatchHooks): Dispatch {
  return async (name, input) => {
    try {
      if (typeof name !== 'string' || !isOperation(name))
        return failure({ code: 'unknown-operation', message: 'there is no such operation' });
      return await run(name, input, handlers, hooks);
    } catch (error) {
      const known = errorOf(error);
      if (known.code === 'internal') hooks.onFault(name, error);
      return failure(known);
    }
  };
}

async function run(name: OperationName, input: unknown, handlers: Handlers, hooks: DispatchHooks): Promise<Result<unknown>> {
  const operation = OPERATIONS[name];
  const checked = operation.input.safeParse(input);
  if (!checked.success) return failure(inputError(checked.error));
  if (operation.kind === 'command') hooks.beforeCommand();
  // The schema of this very name has let the input through.
  const handler = handlers[name] as (input: unknown) => unknown;
  const answer = await handler(checked.data);
  const written = operation.kind === 'command' ? (answer as Written<unknown>) : null;
  const value = operation.output.parse(written === null ? answer : written.value);
  if (operation.kind !== 'query') hooks.afterwards();
  const changed = [...(written?.changed ?? (operation.kind === 'act' ? operation.tags : []))];
  if (changed.length > 0) hooks.onChanged(changed);
  return { ok: true, value, changed };
}

function inputError(error: z.ZodError): ContractError {
  const issue = error.issues[0];
  const field = issue?.path.map(String).join('.') ?? '';
  const message = (issue?.message ?? 'the input does not fit').slice(0, 200);
  return field === '' ? { code: 'bad-input', message } : { code: 'bad-input', message, field: field.slice(0, 200) };
}

const CODES: Record<StoreCode, ErrorCode> = {
  damaged: 'damaged',
  changed: 'damaged',
  older: 'damaged',
  newer: 'damaged',
  foreign: 'damaged',
  locked: 'busy',
  'read-only': 'read-only',
  'disk-full': 'disk-full',
  'no-folder': 'read-only',
  update: 'internal',
};
/** Messages leave the program: none of them holds a path. */
const MESSAGES: Partial<Record<ErrorCode, string>> = {
  damaged: 'the data file is not whole',
  'read-only': 'the data folder can not be written',
  'disk-full': 'the disk is full',
  busy: 'another program holds the data file',
};

/** What an error that was thrown is answered as. */
export function errorOf(error: unknown): ContractError {
  if (error instanceof ContractFailure) return error.error;
  const store = storeCodeOf(error);
  const code = store === null ? 'internal' : CODES[store];
  return { code, message: MESSAGES[code] ?? 'the program made a mistake' };
}

export function failure(error: ContractError): Result<never> {
  return { ok: false, error };
}
