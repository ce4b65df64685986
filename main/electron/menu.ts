/** The menu: what every program has, and paper. The window's own actions are in the window. */
import { BrowserWindow, Menu, type MenuItemConstructorOptions } from 'electron';

function print(): void {
  BrowserWindow.getFocusedWindow()?.webContents.print({ printBackground: true });
}

/** The menu for a platform. */
export function menuTemplate(platform: NodeJS.Platform): MenuItemConstructorOptions[] {
  const isMac = platform === 'darwin';
  return [
    ...(isMac ? [{ role: 'appMenu' } as const] : []),
    {
      label: '&File',
      submenu: [
        { label: '&Print…', accelerator: 'CmdOrCtrl+P', click: print },
        { type: 'separator' },
        isMac ? { role: 'close' } : { role: 'quit' },
      ],
    },
    {
      label: '&Edit',
      submenu: [
        { role: 'undo' },
        { role: 'redo' },
        { type: 'separator' },
        { role: 'cut' },
        { role: 'copy' },
        { role: 'paste' },
        { role: 'selectAll' },
      ],
    },
    {
      label: '&View',
      submenu: [
        { role: 'resetZoom' },
        { role: 'zoomIn' },
        { role: 'zoomOut' },
        { type: 'separator' },
        { role: 'togglefullscreen' },
      ],
    },
    { role: 'windowMenu' },
  ];
}

export function setMenu(): void {
  Menu.setApplicationMenu(Menu.buildFromTemplate(menuTemplate(process.platform)));
}
