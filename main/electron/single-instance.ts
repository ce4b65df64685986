/** One program on one data folder: a second start brings the first one's window to the front. */
import { app, type BrowserWindow } from 'electron';

/** True for the first instance. The lock belongs to the user data folder, which must be set before. */
export function claimInstance(mainWindow: () => BrowserWindow | null): boolean {
  if (!app.requestSingleInstanceLock()) return false;
  app.on('second-instance', () => {
    const window = mainWindow();
    if (window === null) return;
    if (window.isMinimized()) window.restore();
    window.show();
    window.focus();
  });
  return true;
}
