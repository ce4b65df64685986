/**
 * A scale that is not there: stands in the page for the browser's own HID or serial, and says the same bytes as a real one.
 * The program under test knows nothing of it.
 */
import type { Page } from '@playwright/test';
import type { TracePoint } from '../fixtures/scale-traces.ts';

declare global {
  interface Window {
    simulatedScale: {
      /** Plays a trace in real time; resolves when it is over. */
      play(points: readonly { at: number; data: readonly number[] }[]): Promise<void>;
      /** Pulls the plug. */
      unplug(): void;
      /** Bytes of a serial scale, as they come. */
      send(text: string): void;
      opened(): boolean;
      ticks: number;
    };
  }
}

const ITEMS = [
  { usages: Array.from({ length: 9 }, (_, i) => 0x8d0070 + i), reportSize: 8, reportCount: 1 },
  { usages: Array.from({ length: 12 }, (_, i) => 0x8d0051 + i), reportSize: 8, reportCount: 1 },
  { usages: [0x8d0041], reportSize: 8, reportCount: 1 },
  { usages: [0x8d0040], reportSize: 16, reportCount: 1 },
];

/** Call before the first page is opened. `granted`: it was allowed in an earlier run. */
export async function simulateScale(page: Page, options: { granted?: boolean } = {}): Promise<void> {
  await page.addInitScript(
    ({ items, granted }) => {
      class Device extends EventTarget {
        opened = false;
        productName = 'Bench scale';
        collections = [{ usagePage: 0x8d, usage: 0x20, inputReports: [{ reportId: 3, items }], children: [] }];
        async open() {
          this.opened = true;
        }
        async close() {
          this.opened = false;
        }
      }
      class Port extends EventTarget {
        readable: ReadableStream<Uint8Array> | null = null;
        feed: ReadableStreamDefaultController<Uint8Array> | null = null;
        getInfo() {
          return { usbVendorId: 0x403, usbProductId: 0x6001 };
        }
        async open({ baudRate }: { baudRate: number }) {
          if (baudRate !== 9600) throw new Error('wrong speed');
          this.readable = new ReadableStream({
            start: (controller) => {
              this.feed = controller;
            },
          });
        }
        async close() {
          this.readable = null;
        }
      }
      const device = new Device();
      const port = new Port();
      let plugged = true;
      let allowed = granted;
      const hid = Object.assign(new EventTarget(), {
        getDevices: async () => (allowed && plugged ? [device] : []),
        requestDevice: async () => {
          allowed = plugged;
          return plugged ? [device] : [];
        },
      });
      const serial = Object.assign(new EventTarget(), { getPorts: async () => [], requestPort: async () => port });
      Object.defineProperty(navigator, 'hid', { value: hid });
      Object.defineProperty(navigator, 'serial', { value: serial });
      const tell = (data: readonly number[]) => {
        if (!device.opened) return;
        const event = new Event('inputreport');
        Object.assign(event, { device, reportId: 3, data: new DataView(Uint8Array.from(data).buffer) });
        device.dispatchEvent(event);
      };
      window.simulatedScale = {
        ticks: 0,
        opened: () => device.opened,
        async play(points) {
          let before = 0;
          for (const { at, data } of points) {
            await new Promise((go) => setTimeout(go, at - before));
            before = at;
            tell(data);
          }
        },
        unplug() {
          plugged = false;
          device.opened = false;
          hid.dispatchEvent(Object.assign(new Event('disconnect'), { device }));
        },
        send: (text) => port.feed?.enqueue(new TextEncoder().encode(text)),
      };
      const start = OscillatorNode.prototype.start;
      OscillatorNode.prototype.start = function (when) {
        window.simulatedScale.ticks += 1;
        start.call(this, when);
      };
    },
    { items: ITEMS, granted: options.granted === true },
  );
}

/** Plays a trace on the page's scale, to its end. */
export async function play(page: Page, points: readonly TracePoint[]): Promise<void> {
  await page.evaluate((all) => window.simulatedScale.play(all), points);
}

/** Begins a trace and goes on with the test. */
export async function begin(page: Page, points: readonly TracePoint[]): Promise<void> {
  await page.evaluate((all) => {
    void window.simulatedScale.play(all);
  }, points);
}
