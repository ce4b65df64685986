/** Begins with the made-up litters, when asked at the start and none are there. */
import { OPERATIONS } from '../../core/contract/operations.ts';
import type { Dispatch } from '../service/dispatch.ts';
import { now, utcOffsetMinutes } from './clock.ts';

/** Adds the demo litters unless some are there already. Throws when they can't be added. */
export async function beginWithDemo(dispatch: Dispatch): Promise<void> {
  const status = await dispatch('records.status', {});
  if (!status.ok) throw new Error(status.error.message);
  if (OPERATIONS['records.status'].output.parse(status.value).demo) return;
  const input = { now: now().local, utcOffsetMinutes: utcOffsetMinutes() };
  const added = await dispatch('records.addDemo', input);
  if (!added.ok) throw new Error(added.error.message);
}
