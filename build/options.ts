/** What `npm start --` understands. */
import { resolve } from 'node:path';
import { parseArgs } from 'node:util';

export interface StartOptions {
  help: boolean;
  browser: boolean;
  /** For whichever host runs: `--data`, `--demo`, `--port`, `--no-open`. */
  hostArguments: string[];
}

export const USAGE = `npm start -- [--browser] [--data <folder>] [--demo] [--port <number>] [--no-open]
  --browser        open in the browser, without a desktop window
  --data <folder>  keep the records in this folder
  --demo           begin with a made-up litter
  --port <number>  the port of the browser window, 0 to 65535; 0 takes a free one
  --no-open        print the browser's address without opening it`;

/**
 * Reads the arguments of `npm start`. A relative folder is meant from where the command was typed.
 * @returns the options, or one sentence that says what is wrong
 */
export function readOptions(args: readonly string[], typedIn: string): StartOptions | string {
  let values: { help?: boolean; browser?: boolean; data?: string; demo?: boolean; port?: string; 'no-open'?: boolean };
  try {
    values = parseArgs({
      args: [...args],
      options: {
        help: { type: 'boolean' },
        browser: { type: 'boolean' },
        data: { type: 'string' },
        demo: { type: 'boolean' },
        port: { type: 'string' },
        'no-open': { type: 'boolean' },
      },
    }).values;
  } catch (error) {
    return error instanceof Error ? (error.message.split('. ')[0] ?? error.message) : String(error);
  }
  if (values.data === '') return '--data needs a folder';
  if (values.port !== undefined && !(/^\d{1,5}$/.test(values.port) && Number(values.port) <= 65_535)) {
    return `--port needs a number from 0 to 65535, not "${values.port}"`;
  }
  const hostArguments: string[] = [];
  if (values.data !== undefined) hostArguments.push('--data', resolve(typedIn, values.data));
  if (values.demo) hostArguments.push('--demo');
  if (values.port !== undefined) hostArguments.push('--port', values.port);
  if (values['no-open']) hostArguments.push('--no-open');
  return { help: values.help ?? false, browser: values.browser ?? false, hostArguments };
}
