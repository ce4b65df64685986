/** The contract as the window calls it, from inside its page. */
import type { Page } from '@playwright/test';
import type { Result } from '../../core/contract/result.ts';
import type { Dispatch } from '../contract/world.ts';

export function dispatchOf(page: Page): Dispatch {
  return (name, input) =>
    page.evaluate(
      async ([operation, body]) => {
        const key = sessionStorage.getItem('whelpside') ?? '';
        const headers = { 'content-type': 'application/json', 'x-whelpside': key };
        return (await fetch(`/call/${operation}`, { method: 'POST', headers, body })).json() as Promise<Result<unknown>>;
      },
      [name, JSON.stringify(input)] as const,
    );
}
