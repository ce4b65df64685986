/** The arguments of the browser host. */
import { isAbsolute, resolve } from 'node:path';
import { parseArgs } from 'node:util';

export interface HostArguments {
  /** Absolute path, or null for the platform's place. */
  readonly data: string | null;
  readonly demo: boolean;
  /** 0 for a free one. */
  readonly port: number;
  readonly open: boolean;
}

export const USAGE = 'Usage: whelpside [--data <folder>] [--port <number>] [--demo] [--no-open]';

/** Reads the arguments; a text says what is wrong with them. `from` is the folder that a relative path starts at. */
export function readArguments(args: readonly string[], from: string): HostArguments | string {
  let values: { data?: string; demo?: boolean; port?: string; 'no-open'?: boolean };
  try {
    ({ values } = parseArgs({
      args: [...args],
      strict: true,
      options: { data: { type: 'string' }, demo: { type: 'boolean' }, port: { type: 'string' }, 'no-open': { type: 'boolean' } },
    }));
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  }
  const port = values.port ?? '0';
  if (!/^\d{1,5}$/.test(port) || Number(port) > 65_535) return `--port ${port} is not a port number from 0 to 65535`;
  if (values.data === '') return '--data needs the name of a folder';
  const data = values.data === undefined ? null : isAbsolute(values.data) ? values.data : resolve(from, values.data);
  return { data, demo: values.demo ?? false, port: Number(port), open: !(values['no-open'] ?? false) };
}
