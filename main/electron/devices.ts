/** Which device is the scale. The window has already narrowed the list by what a scale is; of several, she chooses. */
import { BrowserWindow, dialog, type Session } from 'electron';
import { isOurFrame } from './address.ts';

interface Choice {
  readonly id: string;
  readonly name: string;
}

/** The id of the chosen device, or '' for none. */
async function chosen(choices: readonly Choice[]): Promise<string> {
  const [only, another] = choices;
  if (only === undefined) return '';
  if (another === undefined) return only.id;
  const options = {
    message: 'Which one is the scale?',
    buttons: [...choices.map((c) => c.name), 'Cancel'],
    cancelId: choices.length,
  };
  const window = BrowserWindow.getFocusedWindow();
  const { response } = window === null ? await dialog.showMessageBox(options) : await dialog.showMessageBox(window, options);
  return choices[response]?.id ?? '';
}

export function chooseDevices(session: Session): void {
  session.on('select-hid-device', (event, details, callback) => {
    event.preventDefault();
    if (!isOurFrame(details.frame)) return callback('');
    // A device with several collections is listed once for each.
    const named = new Map(details.deviceList.map((d) => [d.deviceId, { id: d.deviceId, name: d.name || d.deviceId }]));
    chosen([...named.values()]).then(callback, () => callback(''));
  });
  session.on('select-serial-port', (event, ports, contents, callback) => {
    event.preventDefault();
    if (!isOurFrame(contents.mainFrame)) return callback('');
    const choices = ports.map((port) => ({ id: port.portId, name: port.displayName ?? port.portName }));
    chosen(choices).then(callback, () => callback(''));
  });
}
