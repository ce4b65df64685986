/**
 * `npm run -s assess -- <folder> --out <folder>`: reads every *.csv of a folder (header `puppy,at,weight_g`, at the local
 * `YYYY-MM-DDThh:mm`) and writes beside each name a JSON list of what stood at each weighing, as far as it could be known
 * then. An optional `litters.json` says when a litter was born, what adult weight is expected, of which sex each puppy is, of
 * which breed they are and what such a puppy usually weighs at birth (`breed`, `breed_birth_g`; for breeds without published figures).
 * A file that can't be read is named on the error output and the others go on; the exit code is then 1.
 */

import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { parseArgs } from 'node:util';
import { z } from 'zod';
import { dateOf, type LocalTime, localMinutes, parseLocalTime } from '../core/calendar/clock.ts';
import type { CivilDate } from '../core/calendar/day.ts';
import { growthAt, type LitterGrowth } from '../core/growth/assess.ts';
import { findingsIn, type ReadingFinding } from '../core/growth/findings.ts';
import { classOfAdult } from '../core/growth/forecast.ts';
import { historyOf } from '../core/growth/history.ts';
import type { GrowthInput, GrowthPuppy, GrowthReading } from '../core/growth/input.ts';
import { localTimeSchema } from '../core/units/fields.ts';
import { catalogueOf } from '../core/words/catalogue.ts';

const litterSchema = z.looseObject({
  file: z.string(),
  born_at: localTimeSchema.nullish(),
  expected_adult_kg: z.number().positive().nullish(),
  breed: z.string().nullish(),
  breed_birth_g: z.number().positive().nullish(),
  puppies: z.array(z.looseObject({ puppy: z.string(), sex: z.enum(['f', 'm']).nullish() })).nullish(),
});
type LitterNote = z.infer<typeof litterSchema>;

/** One thing that stood at a weighing. `puppy` is `*` for the litter and for its scale. */
interface Standing {
  readonly puppy: string;
  /** The day on which it was known. */
  readonly date: CivilDate;
  /** The weighing, or the reading that a flag is about. */
  readonly at: LocalTime;
  readonly level: 'watch' | 'act';
  readonly kind: 'puppy' | 'litter' | 'reading';
  /** The other puppy of an exchange. */
  readonly with?: string;
  readonly reason: string;
}

const WHOLE = '*';
const say = catalogueOf('en').growthFinding;
const MINUTE = 60_000;

function main(): number {
  const { values, positionals } = parseArgs({ options: { out: { type: 'string' } }, allowPositionals: true });
  const folder = positionals[0];
  if (folder === undefined) {
    console.error('Give a folder: npm run -s assess -- <folder> --out <folder>');
    return 1;
  }
  const out = values.out ?? folder;
  let failed = 0;
  const complain = (what: string, error: unknown): void => {
    failed += 1;
    console.error(`${what}: ${error instanceof Error ? error.message : String(error)}`);
  };
  let files: string[] = [];
  try {
    files = readdirSync(folder)
      .filter((f) => f.toLowerCase().endsWith('.csv'))
      .sort();
    mkdirSync(out, { recursive: true });
  } catch (error) {
    complain(folder, error);
  }
  const notes = notesIn(folder, complain);
  for (const file of files) {
    try {
      const note = notes.get(file) ?? notes.get(basename(file, '.csv'));
      const input = litterFrom(readFileSync(join(folder, file), 'utf8'), note);
      if (note?.born_at == null) console.log(`${file}: no born_at is noted, so the first weighing is taken as the birth`);
      writeFileSync(join(out, `${file.slice(0, -4)}.json`), `${JSON.stringify(standingsOf(input), null, 1)}\n`);
    } catch (error) {
      complain(file, error);
    }
  }
  console.log(`${files.length} litters, ${failed} failed`);
  return failed === 0 ? 0 : 1;
}

/** The notes of `litters.json` by file name; none when there is no such file. */
function notesIn(folder: string, complain: (what: string, error: unknown) => void): Map<string, LitterNote> {
  let text: string;
  try {
    text = readFileSync(join(folder, 'litters.json'), 'utf8');
  } catch {
    return new Map();
  }
  const notes = new Map<string, LitterNote>();
  try {
    z.array(z.unknown())
      .parse(JSON.parse(text))
      .forEach((entry, i) => {
        const note = litterSchema.safeParse(entry);
        if (note.success) notes.set(note.data.file, note.data);
        else complain(`litters.json, entry ${i + 1}`, z.prettifyError(note.error));
      });
  } catch (error) {
    complain('litters.json', error instanceof z.ZodError ? z.prettifyError(error) : error);
  }
  return notes;
}

interface Line {
  readonly puppy: string;
  readonly at: LocalTime;
  readonly grams: number;
}

function linesOf(csv: string): Line[] {
  const rows = csv
    .replace(/^\uFEFF/, '')
    .split(/\r\n|\n|\r/)
    .map((row) => row.split(',').map((cell) => cell.trim().replace(/^"(.*)"$/, '$1')));
  const header = rows[0] ?? [];
  const [puppy, at, weight] = ['puppy', 'at', 'weight_g'].map((name) => header.indexOf(name));
  if (puppy === undefined || at === undefined || weight === undefined || Math.min(puppy, at, weight) < 0) {
    throw new Error('the first line must be puppy,at,weight_g');
  }
  return rows.slice(1).flatMap((cells, i): Line[] => {
    if (cells.length === 1 && cells[0] === '') return [];
    const name = cells[puppy] ?? '';
    const time = parseLocalTime((cells[at] ?? '').slice(0, 16));
    const text = cells[weight] ?? '';
    if (name === '') throw new Error(`line ${i + 2}: no puppy`);
    if (time === null) throw new Error(`line ${i + 2}: ${cells[at] ?? ''} is not a time YYYY-MM-DDThh:mm`);
    // A puppy that was not weighed then.
    if (text === '') return [];
    const grams = Number(text);
    if (!(Number.isFinite(grams) && grams > 0)) throw new Error(`line ${i + 2}: ${text} is not a weight in grams`);
    return [{ puppy: name, at: time, grams }];
  });
}

/** Times are taken as they stand on the clock: a file does not say its zone. */
function litterFrom(csv: string, note: LitterNote | undefined): GrowthInput {
  const lines = linesOf(csv);
  if (lines.length === 0) throw new Error('no weights');
  const instantOf = (at: LocalTime) => localMinutes(at) * MINUTE;
  const first = Math.min(...lines.map((l) => instantOf(l.at)));
  const bornInstant = note?.born_at == null ? first : instantOf(note.born_at);
  const sexes = new Map(note?.puppies?.map((p) => [p.puppy, p.sex]));
  // Those listed first: a litter cut short before somebody's first weight is then the same litter.
  const weighed = new Set(lines.map((l) => l.puppy));
  const listed = (note?.puppies ?? []).map((p) => p.puppy);
  const known = listed.some((name) => weighed.has(name)) ? listed : [];
  const names = [...new Set([...known, ...weighed])];
  return {
    puppies: names.map(
      (name): GrowthPuppy => ({
        id: name,
        name,
        sex: sexes.get(name) === 'm' ? 'dog' : 'bitch',
        bornInstant,
        endsInstant: null,
        state: 'litter',
      }),
    ),
    readings: lines.map(
      (l, i): GrowthReading => ({
        id: String(i).padStart(6, '0'),
        puppyId: l.puppy,
        at: l.at,
        instant: instantOf(l.at),
        grams: l.grams,
        session: Number(l.at.slice(11, 13)) < 13 ? 'morning' : 'evening',
        held: false,
        kept: false,
      }),
    ),
    scaleStepGrams: null,
    sizeClass: note?.expected_adult_kg == null ? null : classOfAdult(note.expected_adult_kg),
    breed: note?.breed ?? '',
    breedBirthGrams: note?.breed_birth_g ?? null,
    unit: 'g',
  };
}

/** Everything that stood, weighing by weighing, oldest first. */
function standingsOf(input: GrowthInput): Standing[] {
  const readings = new Map(input.readings.map((r) => [r.id, r]));
  const said = new Set<string>();
  return historyOf(input).flatMap((known): Standing[] => {
    const rows = known.cleaned.sessions.at(-1)?.rows ?? [];
    const now = rows.at(-1)?.reading.at;
    if (now === undefined) return [];
    const flagged = rows.filter((r) => (known.puppies[r.index]?.level ?? 'steady') !== 'steady');
    const growth = flagged.length > 0 || known.litter.level !== 'steady' ? growthAt(input, known) : null;
    return [
      ...(growth === null
        ? []
        : puppiesIn(
            growth,
            flagged.map((r) => ({ puppy: r.puppy.id, at: r.reading.at })),
          )),
      ...(growth === null || growth.litter.level === 'steady'
        ? []
        : [
            {
              puppy: WHOLE,
              date: dateOf(now),
              at: now,
              level: growth.litter.level,
              kind: 'litter' as const,
              reason: plain(say.litter(growth.litter.finding, 'g')),
            },
          ]),
      ...findingsIn(known.cleaned, now, input.puppies).flatMap((f) => {
        const key = `${f.kind} ${f.readingId} ${f.withReadingId ?? ''}`;
        if (said.has(key)) return [];
        said.add(key);
        return readingFlags(f, readings, dateOf(now));
      }),
    ];
  });
}

function puppiesIn(growth: LitterGrowth, flagged: readonly { readonly puppy: string; readonly at: LocalTime }[]): Standing[] {
  return flagged.flatMap(({ puppy, at }): Standing[] => {
    const a = growth.puppies.get(puppy);
    return a === undefined || a.level === 'steady'
      ? []
      : [{ puppy, date: dateOf(at), at, level: a.level, kind: 'puppy', reason: plain(say.puppy(a.finding, 'g')) }];
  });
}

function readingFlags(f: ReadingFinding, readings: ReadonlyMap<string, GrowthReading>, date: CivilDate): Standing[] {
  const own = readings.get(f.readingId);
  const other = f.withReadingId === null ? undefined : readings.get(f.withReadingId);
  if (own === undefined) return [];
  const base = { date, level: 'watch', kind: 'reading', reason: plain(say.reading(f, 'g')) } as const;
  if (f.kind === 'scale') return [{ puppy: WHOLE, at: own.at, ...base }];
  if (other === undefined) return [{ puppy: own.puppyId, at: own.at, ...base }];
  return [
    { puppy: own.puppyId, at: own.at, with: other.puppyId, ...base },
    { puppy: other.puppyId, at: other.at, with: own.puppyId, ...base },
  ];
}

/** Ordinary spaces, for readers of plain files. */
function plain(text: string): string {
  return text.replaceAll('\u00a0', ' ');
}

process.exitCode = main();
