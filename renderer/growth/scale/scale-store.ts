/** The one scale of this window: connected once, it stays so from page to page. */

import { create } from 'zustand';
import { afresh, type Capture, hear, NOTHING_HEARD, pass, take } from '../../../core/growth/scale/capture.ts';
import type { ScaleTrouble, ScaleWay } from '../../../core/growth/scale/value.ts';
import type { KnownScale } from '../../../core/people/house.ts';
import type { MassUnit } from '../../../core/units/mass.ts';
import { chooseHid, knownHid, openHid } from './hid-scale.ts';
import { type Hearing, NoLink, type ScaleLink } from './link.ts';
import { choosePort, knownPort, openPort } from './serial-scale.ts';

export const USUAL_BAUD = 9600;
const LISTEN_MS = 200;

interface ScaleState {
  readonly status: 'none' | 'opening' | 'on' | 'lost';
  readonly way: ScaleWay | null;
  readonly name: string;
  readonly trouble: ScaleTrouble | null;
  readonly capture: Capture;
  /** The puppy whose weight was taken from the load that is still on the scale. */
  readonly takenOf: string | null;
}

export const useScaleStore = create<ScaleState>()(() => ({
  status: 'none',
  way: null,
  name: '',
  trouble: null,
  capture: NOTHING_HEARD,
  takenOf: null,
}));

const set = useScaleStore.setState;

/** What she said about her scale, by House rules or when asked. */
const said: { stepGrams: number | null; unit: MassUnit | null } = { stepGrams: null, unit: null };
let link: ScaleLink | null = null;
let timer: ReturnType<typeof setInterval> | null = null;

export function tellScale(stepGrams: number | null, unit: MassUnit | null): void {
  said.stepGrams = stepGrams;
  said.unit = unit;
}

const hearing: Hearing = {
  heard: (value, at) => set((s) => ({ capture: hear(s.capture, value, at, said.stepGrams) })),
  lost: () => {
    void letGo();
    set({ status: 'lost', capture: NOTHING_HEARD, takenOf: null });
  },
};

async function letGo(): Promise<void> {
  if (timer !== null) clearInterval(timer);
  timer = null;
  const old = link;
  link = null;
  await old?.close();
}

async function connected(way: ScaleWay, opening: Promise<ScaleLink>): Promise<string | null> {
  try {
    link = await opening;
  } catch (error) {
    set({ status: 'none', trouble: error instanceof NoLink ? error.trouble : 'cannot-open' });
    return null;
  }
  set({ status: 'on', way, name: link.name, trouble: null, capture: NOTHING_HEARD, takenOf: null });
  timer = setInterval(() => set((s) => ({ capture: pass(s.capture, performance.now()) })), LISTEN_MS);
  return link.name;
}

/** Asks for the device and opens it; must be called from a click or a key. Answers its name, or null when there is none. */
export async function connectScale(way: ScaleWay, baudRate: number): Promise<string | null> {
  await letGo();
  set({ status: 'opening', trouble: null });
  return connected(
    way,
    way === 'usb'
      ? chooseHid().then((device) => openHid(device, hearing))
      : choosePort().then((port) => openPort(port, baudRate, () => said.unit, hearing)),
  );
}

/** Opens the scale of last time without asking, if it is there. */
export async function findScale(remembered: KnownScale): Promise<void> {
  if (link !== null || useScaleStore.getState().status === 'opening') return;
  const before = useScaleStore.getState().status;
  set({ status: 'opening' });
  const found = await (remembered.way === 'usb'
    ? knownHid(remembered.name).then((d) => (d === null ? null : openHid(d, hearing)))
    : knownPort(remembered.name).then((p) => (p === null ? null : openPort(p, remembered.baudRate, () => said.unit, hearing)))
  ).catch(() => null);
  if (found === null) set({ status: before });
  else await connected(remembered.way, Promise.resolve(found));
}

/** Hears of scales that are plugged in or switched on. Answers how to stop. */
export function onPlugged(listener: () => void): () => void {
  const ways = [navigator.hid, navigator.serial];
  for (const way of ways) way?.addEventListener('connect', listener);
  return () => {
    for (const way of ways) way?.removeEventListener('connect', listener);
  };
}

export async function disconnectScale(): Promise<void> {
  await letGo();
  set({ status: 'none', trouble: null, capture: NOTHING_HEARD, takenOf: null });
}

/** Somebody begins to weigh: what lay on the scale before is nobody's weight. */
export function beginWeighing(): void {
  set((s) => ({ capture: afresh(s.capture) }));
}

/** What the scale came to was used, for this puppy. */
export function takeWeight(puppyName: string): void {
  set((s) => ({ capture: take(s.capture), takenOf: puppyName }));
}
