/** The parts of WebHID and Web Serial that a scale needs, as the two drafts of the WICG have them: no library describes them. */

export interface HidItem {
  readonly usages?: readonly number[];
  readonly isRange?: boolean;
  readonly usageMinimum?: number;
  readonly usageMaximum?: number;
  readonly reportSize?: number;
  readonly reportCount?: number;
}

export interface HidCollection {
  readonly usagePage?: number;
  readonly inputReports?: readonly { readonly reportId?: number; readonly items?: readonly HidItem[] }[];
  readonly children?: readonly HidCollection[];
}

export interface HidDevice extends EventTarget {
  readonly opened: boolean;
  readonly productName: string;
  readonly collections: readonly HidCollection[];
  open(): Promise<void>;
  close(): Promise<void>;
}

/** `data` is without the report's number. */
export interface HidReportEvent extends Event {
  readonly device: HidDevice;
  readonly reportId: number;
  readonly data: DataView;
}

interface Hid extends EventTarget {
  getDevices(): Promise<HidDevice[]>;
  /** Needs a click or a key; empty when nothing was chosen. */
  requestDevice(options: { readonly filters: readonly { readonly usagePage: number }[] }): Promise<HidDevice[]>;
}

export interface SerialPort extends EventTarget {
  readonly readable: ReadableStream<Uint8Array> | null;
  getInfo(): { readonly usbVendorId?: number; readonly usbProductId?: number };
  open(options: { readonly baudRate: number }): Promise<void>;
  close(): Promise<void>;
}

interface Serial extends EventTarget {
  getPorts(): Promise<SerialPort[]>;
  /** Needs a click or a key; rejects with a NotFoundError when nothing was chosen. */
  requestPort(): Promise<SerialPort>;
}

declare global {
  interface Navigator {
    readonly hid?: Hid;
    readonly serial?: Serial;
  }
}
