/** Units, dates and contrast, against published definitions. */

import { addDays, date } from '../../core/calendar/day.ts';
import { type DoseLabel, doseOf } from '../../core/care/dose.ts';
import { readChip } from '../../core/care/microchip.ts';
import { decodeNumberedReport, decodeReport } from '../../core/growth/scale/hid-report.ts';
import { parseLine } from '../../core/growth/scale/serial-line.ts';
import { figureOf, sift } from '../../core/growth/scale/steady.ts';
import type { ScaleValue } from '../../core/growth/scale/value.ts';
import { earliestGoHome } from '../../core/homing/go-home-day.ts';
import { readCsv, rearm, writeCsv } from '../../core/records/csv.ts';
import { GO_HOME_RULES } from '../../core/reference/go-home.ts';
import { GRAMS_PER_OUNCE, GRAMS_PER_POUND } from '../../core/units/mass.ts';
import { massText } from '../../core/words/en/amounts.ts';
import { type EvidenceRow, row } from './row.ts';

const POUND = 'International yard and pound agreement 1959; Unicode CLDR common/supplemental/units.xml, citing NIST SP 1038';
const HID = 'USB HID Point of Sale Usage Tables 1.02, 5 March 2001, weighing devices, usages 0x40 to 0x78';
const HID_TESTS = `${HID}; bytes and weight as in the tests of the open reader usb-scale-reader, commit 51caa08`;
const LINES =
  'Layout of a comma line (status, gross or net, sign, value, unit) as in indicator manuals, p. 18 to 21; the value follows from it';
const bytesOf = (hex: string) => Uint8Array.from(hex.split(' '), (h) => Number.parseInt(h, 16));
/** A weight as grams, stable, gross or net; else why it is none. */
const said = (v: ScaleValue | null) => (v?.kind === 'weight' ? [v.grams, v.stable, v.basis] : whyNot(v));
const whyNot = (v: ScaleValue | null) => (v?.kind === 'fault' ? v.fault : (v?.kind ?? null));
const gramsOf = (v: ScaleValue | null) => (v?.kind === 'weight' ? v.grams : null);
/** The first day by the rule that the program lists for a country. */
function earliest({ born, where }: { readonly born: string; readonly where: string }): string | null {
  const rule = GO_HOME_RULES.find((r) => r.where === where);
  return rule === undefined ? null : earliestGoHome(date(born), rule);
}
const DOSE_DAY = date('2026-11-12');
const ANY_LABEL: DoseLabel = {
  rate: { amount: 0.5, unit: 'mg/kg' },
  light: null,
  strength: { amount: 2.3, unit: 'mg/tablet' },
  mark: 0.001,
  leastDays: null,
  leastGrams: null,
};
const puppyOf = (grams: number, days: number) =>
  ({ bornOn: addDays(DOSE_DAY, -days), level: 'steady', weighed: { grams, instant: 0 } }) as const;
/** Milligrams and the exact amount; nothing when it is refused. */
function doseFigures({ grams, label }: { readonly grams: number; readonly label: Partial<DoseLabel> }): number[] {
  const answer = doseOf({ ...ANY_LABEL, ...label }, puppyOf(grams, 42), { day: DOSE_DAY, instant: 0 });
  return answer.ok ? [answer.dose.mg, answer.dose.exact] : [];
}
const plain = (s: string) => s.replaceAll('\u00a0', ' ');

export const standardsRows: readonly EvidenceRow[] = [
  row({
    id: 'standards 1',
    quantity: 'pound in grams',
    inputs: {},
    expected: 453.59237,
    tolerance: 0,
    source: POUND,
    known: 'seen',
    run: () => GRAMS_PER_POUND,
  }),
  row({
    id: 'standards 2',
    quantity: 'ounce in grams',
    inputs: {},
    expected: 28.349523125,
    tolerance: 0,
    source: `${POUND}; divided by 16`,
    known: 'computed',
    run: () => GRAMS_PER_OUNCE,
  }),
  row({
    id: 'standards 5',
    quantity: '453 g in pounds and ounces, carried',
    inputs: 453,
    expected: '1 lb 0.0 oz',
    tolerance: 'exact',
    source: 'Computed from the pound above, rounded to 0.1 oz before carrying',
    known: 'computed',
    run: (g) => plain(massText(g, 'lboz')),
  }),
  row({
    id: 'standards 6',
    quantity: '600 g in pounds and ounces',
    inputs: 600,
    expected: '1 lb 5.2 oz',
    tolerance: 'exact',
    source: 'Computed from the pound above: 21.16438 oz',
    known: 'computed',
    run: (g) => plain(massText(g, 'lboz')),
  }),
  row({
    id: 'standards 17',
    quantity: 'the largest number of an animal on a chip, and the next one',
    inputs: ['982274877906943', '982274877906944'],
    expected: [true, false],
    tolerance: 'exact',
    source:
      'ISO 11784, bit layout as drawn by the International Committee for Animal Recording (identification guidelines): 10 bits of country or maker, 38 bits of the animal',
    known: 'seen',
    run: (codes) => codes.map((code) => readChip(code).ok),
  }),
  row({
    id: 'standards 17a',
    quantity: 'countries and makers by the first three figures',
    inputs: ['826', '040', '056', '276', '840', '900', '982', '999'],
    expected: ['GB', 'AT', 'BE', 'DE', 'US', 'makers-together', 'maker', 'test'],
    tolerance: 'exact',
    source:
      'ISO 3166-1 numeric codes; codes 900 to 998 by the registration rules of the International Committee for Animal Recording',
    known: 'second-hand',
    run: (prefixes) =>
      prefixes.map((prefix) => {
        const read = readChip(`${prefix}000000000001`);
        if (!read.ok) return read.fault.code;
        return read.issuer.by === 'country' ? read.issuer.region : read.issuer.by;
      }),
  }),
  row({
    id: 'standards 19',
    quantity: 'a number that begins with 999 is for tests',
    inputs: '999000000000001',
    expected: 'test',
    tolerance: 'exact',
    source: 'ISO 11784, code 999',
    known: 'from memory',
    run: (code) => {
      const read = readChip(code);
      return read.ok ? read.issuer.by : read.fault.code;
    },
  }),
  row({
    id: 'standards 20',
    quantity: 'a line as a reader sends it',
    inputs: 'LA 982 000001088420\r\n',
    expected: '982000001088420',
    tolerance: 'exact',
    source: 'manual of a panel reader for ISO 11784/11785 transponders, section on its output format',
    known: 'seen',
    run: (line) => {
      const read = readChip(line);
      return read.ok ? read.code : read.fault.code;
    },
  }),
  row({
    id: 'standards 21',
    quantity: 'earliest day under "at least 8 weeks", born 2025-03-01',
    inputs: { born: '2025-03-01', where: 'england' },
    expected: '2025-04-26',
    tolerance: 'exact',
    source:
      'The Animal Welfare (Licensing of Activities Involving Animals) (England) Regulations 2018, SI 2018/486, Schedule 6 paragraph 1(5)',
    known: 'computed',
    run: earliest,
  }),
  row({
    id: 'standards 22',
    quantity: 'earliest day under "over 8 weeks", born 2025-03-01',
    inputs: { born: '2025-03-01', where: 'germany' },
    expected: '2025-04-27',
    tolerance: 'exact',
    source: 'Tierschutz-Hundeverordnung (Germany), section 2(4)',
    known: 'computed',
    run: earliest,
  }),
  row({
    id: 'standards 23',
    quantity: '56 days over a leap day, born 2024-02-01',
    inputs: { born: '2024-02-01', days: 56 },
    expected: '2024-03-28',
    tolerance: 'exact',
    source: 'Gregorian calendar, ISO 8601-1',
    known: 'computed',
    run: (i) => addDays(date(i.born), i.days),
  }),
  row({
    id: 'standards 28',
    quantity: 'fenbendazole for 1.2 kg at 50 mg/kg of 100 mg/mL: mg, mL',
    inputs: { grams: 1200, label: { rate: { amount: 50, unit: 'mg/kg' }, strength: { amount: 100, unit: 'mg/mL' } } },
    expected: [60, 0.6],
    tolerance: 1e-9,
    source:
      'United States Code of Federal Regulations, title 21, 520.905b (50 mg/kg daily) and 520.905a (strength of a suspension); the arithmetic as a school of veterinary medicine teaches it',
    known: 'computed',
    run: doseFigures,
  }),
  row({
    id: 'standards 29',
    quantity: 'the same puppy, another strength: mg, mL',
    inputs: { grams: 1200, label: { rate: { amount: 50, unit: 'mg/kg' }, strength: { amount: 25, unit: 'mg/mL' } } },
    expected: [60, 2.4],
    tolerance: 1e-9,
    source: 'United States Code of Federal Regulations, title 21, 520.905b; computed',
    known: 'computed',
    run: doseFigures,
  }),
  row({
    id: 'standards 30',
    quantity: 'pyrantel on either side of five pounds: 2.260 kg and 2.300 kg, mg',
    inputs: [2260, 2300],
    expected: [22.6, 11.5],
    // The rates are printed rounded, in pounds: 4.54 and 2.27 mg/lb are 10.01 and 5.00 mg/kg.
    tolerance: 0.03,
    source: 'United States Code of Federal Regulations, title 21, 520.2042: 4.54 mg/lb up to 5 lb, 2.27 mg/lb above',
    known: 'computed',
    run: (weights) =>
      weights.map((grams) => {
        const light = { upToGrams: 5 * GRAMS_PER_POUND, rate: { amount: 4.54, unit: 'mg/lb' } } as const;
        return (
          doseFigures({
            grams,
            label: { rate: { amount: 2.27, unit: 'mg/lb' }, light, strength: { amount: 4.54, unit: 'mg/mL' } },
          })[0] ?? 0
        );
      }),
  }),
  row({
    id: 'standards 31',
    quantity: 'milbemycin oxime: three weeks old; 0.90 kg; four weeks and 0.907 kg',
    inputs: [
      [21, 1500],
      [42, 900],
      [28, 907],
    ],
    expected: ['dose-too-young', 'dose-too-light', 'given'],
    tolerance: 'exact',
    source:
      'United States Code of Federal Regulations, title 21, 520.1441: not under four weeks of age, not under 2 lb (0.907 kg)',
    known: 'seen',
    run: (puppies) =>
      puppies.map(([days, grams]) => {
        const answer = doseOf({ ...ANY_LABEL, leastDays: 28, leastGrams: 907 }, puppyOf(grams ?? 0, days ?? 0), {
          day: DOSE_DAY,
          instant: 0,
        });
        return answer.ok ? 'given' : answer.why.code;
      }),
  }),
  row({
    id: 'standards 8',
    quantity: 'report of a USB scale in grams',
    inputs: '03 04 02 00 6E 03',
    expected: [878, true, null],
    tolerance: 0,
    source: HID_TESTS,
    known: 'seen',
    run: (hex) => said(decodeNumberedReport(bytesOf(hex))),
  }),
  row({
    id: 'standards 9',
    quantity: 'report in ounces, as grams',
    inputs: '03 04 0B FF 4E 00',
    expected: [221.126280375, true, null],
    tolerance: 1e-9,
    source: HID_TESTS,
    known: 'seen',
    run: (hex) => said(decodeNumberedReport(bytesOf(hex))),
  }),
  row({
    id: 'standards 9b',
    quantity: 'reports of 2.5 and 15.1 oz, as grams',
    inputs: ['03 04 0B FF 19 00', '03 04 0B FF 97 00'],
    expected: [70.8738078125, 428.0777991875],
    tolerance: 1e-9,
    source: `${HID}; the ounce as above`,
    known: 'computed',
    run: (all) => all.map((hex) => gramsOf(decodeNumberedReport(bytesOf(hex)))),
  }),
  row({
    id: 'standards 10',
    quantity: 'report in kilograms, as grams',
    inputs: '03 04 03 FE D2 04',
    expected: [12_340, true, null],
    tolerance: 1e-9,
    source: `${HID}: 1234 × 0.01 kg`,
    known: 'computed',
    run: (hex) => said(decodeNumberedReport(bytesOf(hex))),
  }),
  row({
    id: 'standards 11',
    quantity: 'report in pounds, as grams',
    inputs: '03 04 0C FF 7B 00',
    expected: [5579.186151, true, null],
    tolerance: 1e-9,
    source: `${HID}: 123 × 0.1 lb; the pound as above`,
    known: 'computed',
    run: (hex) => said(decodeNumberedReport(bytesOf(hex))),
  }),
  row({
    id: 'standards 12',
    quantity: 'zero, under zero, unknown unit: no weight',
    inputs: ['03 02 0B FF 00 00', '03 05 0B FF 00 00', '03 04 00 00 90 00'],
    expected: ['zero', 'under-zero', 'unit'],
    tolerance: 'exact',
    source: HID_TESTS,
    known: 'seen',
    run: (all) => all.map((hex) => whyNot(decodeNumberedReport(bytesOf(hex)))),
  }),
  row({
    id: 'standards 12b',
    quantity: 'a sample in motion, and a power of ten above zero: 50 × 10 g',
    inputs: ['03 03 02 00 F4 01', '03 04 02 01 32 00'],
    expected: [500, 500],
    tolerance: 0,
    source: HID,
    known: 'computed',
    run: (all) => all.map((hex) => gramsOf(decodeNumberedReport(bytesOf(hex)))),
  }),
  row({
    id: 'standards 13',
    quantity: 'the browser hands the report over without its number',
    inputs: '04 02 00 6E 03',
    expected: [878, true, null],
    tolerance: 0,
    source: 'WICG WebHID, index.html, HIDInputReportEvent: `data` excludes the report id',
    known: 'seen',
    run: (hex) => said(decodeReport(bytesOf(hex))),
  }),
  row({
    id: 'standards 14',
    quantity: 'line of a serial scale',
    inputs: 'ST,GS,+00012.34kg\r\n',
    expected: [12_340, true, 'gross'],
    tolerance: 1e-9,
    source: LINES,
    known: 'computed',
    run: (line) => said(parseLine(line, null)),
  }),
  row({
    id: 'standards 15',
    quantity: 'line of a serial scale in motion, below zero',
    inputs: 'US,NT,-000.250kg',
    expected: [-250, false, 'net'],
    tolerance: 1e-9,
    source: LINES,
    known: 'computed',
    run: (line) => said(parseLine(line, null)),
  }),
  row({
    id: 'standards 16',
    quantity: 'one figure from nine: median, limit of the outlier rule, what it rejects',
    inputs: [512, 508, 640, 515, 509, 511, 498, 514, 510],
    expected: [511, 13.34, 640],
    tolerance: 0.005,
    source: 'Hampel rule, Pearson 2002 (IEEE Trans Control Syst Technol 10:55), from memory: |x − median| > 3 × 1.4826 × MAD',
    known: 'computed',
    run: (values) => {
      const { median: middle, limit, rejected } = sift(values);
      return [middle, limit, ...rejected];
    },
  }),
  row({
    id: 'standards 16b',
    quantity: 'the figure that is written, against the mean without the largest and the smallest',
    inputs: [512, 508, 640, 515, 509, 511, 498, 514, 510],
    expected: 511.29,
    tolerance: 1.5,
    source: 'Trimmed mean, one value from each end: 3579 / 7',
    known: 'computed',
    run: (values) => figureOf(values).grams,
  }),
  row({
    id: 'standards 36',
    quantity: 'a quote inside a cell of CSV is doubled and the cell quoted',
    inputs: 'a"b,c',
    expected: '"a""b,c"',
    tolerance: 'exact',
    source: 'RFC 4180 (Shafranovich 2005), section 2, rules 5 to 7',
    known: 'from memory',
    run: (text) => writeCsv([[text]]).replace(/\r\n$/, ''),
  }),
  row({
    id: 'standards 36a',
    quantity: 'records of CSV end in CR LF, figures stand bare',
    inputs: {},
    expected: '"aaa","bbb"\r\n-12,0.5\r\n',
    tolerance: 'exact',
    source: 'RFC 4180 (Shafranovich 2005), section 2, rules 1, 2 and 5',
    known: 'seen',
    run: () =>
      writeCsv([
        ['aaa', 'bbb'],
        [-12, 0.5],
      ]),
  }),
  row({
    id: 'standards 36b',
    quantity: 'a line break, a quote and a comma inside cells of CSV are read back',
    inputs: '"aaa","b\r\nbb","c""c,c"\r\nzzz,yyy, x \r\n',
    expected: ['aaa', 'b\r\nbb', 'c"c,c', 'zzz', 'yyy', ' x '],
    tolerance: 'exact',
    source: 'RFC 4180 (Shafranovich 2005), section 2, rules 4, 6 and 7, its examples',
    known: 'from memory',
    run: (text) => {
      const read = readCsv(text);
      return read.ok ? read.rows.flat() : read.fault.code;
    },
  }),
  row({
    id: 'standards 37',
    quantity: 'text that begins a formula is disarmed for spreadsheets',
    inputs: '=1+2";=1+2',
    expected: `"'=1+2"";=1+2"`,
    tolerance: 'exact',
    source: 'OWASP, CSV Injection (www-community, pages/attacks/CSV_Injection)',
    known: 'seen',
    run: (text) => writeCsv([[text]]).replace(/\r\n$/, ''),
  }),
  row({
    id: 'standards 37a',
    quantity: 'every mark that OWASP names is disarmed, and comes back as it was',
    inputs: ['=', '+', '-', '@', '\t', '\r', '\n'],
    expected: true,
    tolerance: 'exact',
    source: 'OWASP, CSV Injection (www-community, pages/attacks/CSV_Injection)',
    known: 'seen',
    run: (marks) =>
      marks.every((mark) => {
        const text = writeCsv([[`${mark}x`]]);
        const read = readCsv(text);
        return text.startsWith(`"'${mark}x`) && read.ok && rearm(read.rows[0]?.[0] ?? '') === `${mark}x`;
      }),
  }),
];
