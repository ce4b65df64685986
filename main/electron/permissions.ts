/** Everything that a page may ask of the machine is denied, but the scale to our own page. */
import type { Session } from 'electron';
import { isOwn } from './address.ts';

/** The two ways to a scale. */
const GRANTED = new Set(['hid', 'serial']);

/** Whether a page may have this permission. */
function mayHave(permission: string, address: string): boolean {
  return GRANTED.has(permission) && isOwn(address);
}

/** Sets all three handlers: Electron grants everything where one is missing. */
export function restrictPermissions(session: Session): void {
  session.setPermissionRequestHandler((_contents, permission, callback, details) => {
    callback(details.isMainFrame && mayHave(permission, details.requestingUrl));
  });
  session.setPermissionCheckHandler(
    (_contents, permission, origin, details) => details.isMainFrame && mayHave(permission, origin),
  );
  session.setDevicePermissionHandler(({ deviceType, origin }) => mayHave(deviceType, origin));
}
