/** Scales that send lines of text over a serial port, through Web Serial: 8 data bits, no parity, one stop bit. */
import { lines, parseLine } from '../../../core/growth/scale/serial-line.ts';
import type { MassUnit } from '../../../core/units/mass.ts';
import type { SerialPort } from './devices.ts';
import { type Hearing, NoLink, type ScaleLink } from './link.ts';

/** Asks which one; must be called from a click or a key. Throws {@link NoLink}. */
export async function choosePort(): Promise<SerialPort> {
  if (navigator.serial === undefined) throw new NoLink('no-way');
  try {
    return await navigator.serial.requestPort();
  } catch {
    throw new NoLink('none-chosen');
  }
}

/** A port that may be used already and has this name. One without a name is taken only when it is the only one. */
export async function knownPort(name: string): Promise<SerialPort | null> {
  const ports = (await navigator.serial?.getPorts().catch(() => [])) ?? [];
  const named = ports.filter((p) => nameOf(p) === name);
  return (name === '' && ports.length > 1 ? undefined : named[0]) ?? null;
}

/** A port has no name of its own: the numbers of its USB adapter, '' where there is none. */
function nameOf(port: SerialPort): string {
  const { usbVendorId, usbProductId } = port.getInfo();
  if (usbVendorId === undefined || usbProductId === undefined) return '';
  return `${usbVendorId.toString(16).padStart(4, '0')}:${usbProductId.toString(16).padStart(4, '0')}`;
}

/** `said` is asked at each line: the unit of numbers that come without one. */
export async function openPort(
  port: SerialPort,
  baudRate: number,
  said: () => MassUnit | null,
  hearing: Hearing,
): Promise<ScaleLink> {
  try {
    if (port.readable === null) await port.open({ baudRate });
  } catch {
    throw new NoLink('cannot-open');
  }
  let closing = false;
  let reader: ReadableStreamDefaultReader<Uint8Array> | null = null;
  const text = new TextDecoder('latin1');
  const feed = lines((line) => {
    const value = parseLine(line, said());
    if (value !== null) hearing.heard(value, performance.now());
  });
  const listen = async () => {
    // A framing or parity fault ends the stream but not the port: it gives a new one.
    while (!closing && port.readable !== null) {
      reader = port.readable.getReader();
      try {
        for (let part = await reader.read(); !part.done; part = await reader.read())
          feed(text.decode(part.value, { stream: true }));
        if (!closing) return;
      } catch {
        // As above.
      } finally {
        reader.releaseLock();
      }
    }
  };
  const ended = listen().finally(() => {
    if (!closing) hearing.lost();
  });
  return {
    name: nameOf(port),
    async close() {
      closing = true;
      await reader?.cancel().catch(() => undefined);
      await ended.catch(() => undefined);
      await port.close().catch(() => undefined);
    },
  };
}
