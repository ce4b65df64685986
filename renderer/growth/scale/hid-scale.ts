/** USB scales through WebHID: the weight report is found by its usages, never by the maker's number. */
import {
  decodeReport,
  layoutOf,
  type ReportLayout,
  SCALE_USAGE_PAGE,
  USUAL_LAYOUT,
  USUAL_REPORT_ID,
} from '../../../core/growth/scale/hid-report.ts';
import type { HidCollection, HidDevice, HidItem, HidReportEvent } from './devices.ts';
import { type Hearing, NoLink, type ScaleLink } from './link.ts';

function all(collections: readonly HidCollection[]): HidCollection[] {
  return collections.flatMap((c) => [c, ...all(c.children ?? [])]);
}

function isScale(device: HidDevice): boolean {
  return all(device.collections).some((c) => c.usagePage === SCALE_USAGE_PAGE);
}

/** Asks which one; must be called from a click or a key. Throws {@link NoLink}. */
export async function chooseHid(): Promise<HidDevice> {
  const hid = navigator.hid;
  if (hid === undefined) throw new NoLink('no-way');
  const chosen = await hid.requestDevice({ filters: [{ usagePage: SCALE_USAGE_PAGE }] }).catch(() => []);
  const device = chosen.find(isScale);
  if (device === undefined) throw new NoLink(chosen.length === 0 ? 'none-chosen' : 'not-a-scale');
  return device;
}

/** A scale that may be used already, the one of this name first; null when none is plugged in. */
export async function knownHid(name: string): Promise<HidDevice | null> {
  const scales = ((await navigator.hid?.getDevices().catch(() => [])) ?? []).filter(isScale);
  return scales.find((d) => d.productName === name) ?? scales[0] ?? null;
}

export async function openHid(device: HidDevice, hearing: Hearing): Promise<ScaleLink> {
  const { reportId, layout } = weightReport(device.collections);
  try {
    if (!device.opened) await device.open();
  } catch {
    throw new NoLink('cannot-open');
  }
  const onReport = (event: Event) => {
    const report = event as HidReportEvent;
    // A device without report numbers says 0.
    if (report.reportId !== reportId && report.reportId !== 0) return;
    const { buffer, byteOffset, byteLength } = report.data;
    hearing.heard(decodeReport(new Uint8Array(buffer, byteOffset, byteLength), layout), performance.now());
  };
  const onGone = (event: Event) => {
    if ((event as HidReportEvent).device === device) hearing.lost();
  };
  device.addEventListener('inputreport', onReport);
  navigator.hid?.addEventListener('disconnect', onGone);
  return {
    name: device.productName,
    async close() {
      device.removeEventListener('inputreport', onReport);
      navigator.hid?.removeEventListener('disconnect', onGone);
      await device.close().catch(() => undefined);
    },
  };
}

function weightReport(collections: readonly HidCollection[]): { reportId: number; layout: ReportLayout } {
  for (const report of all(collections).flatMap((c) => c.inputReports ?? [])) {
    const layout = layoutOf(
      (report.items ?? []).map((item) => ({ usages: usagesOf(item), bits: (item.reportSize ?? 0) * (item.reportCount ?? 0) })),
    );
    if (layout !== null) return { reportId: report.reportId ?? USUAL_REPORT_ID, layout };
  }
  return { reportId: USUAL_REPORT_ID, layout: USUAL_LAYOUT };
}

function usagesOf(item: HidItem): readonly number[] {
  if (item.isRange !== true) return item.usages ?? [];
  const [from, until] = [item.usageMinimum, item.usageMaximum];
  return from === undefined || until === undefined ? [] : [from, until];
}
