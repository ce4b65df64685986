import { useDeferredValue, useMemo, useRef, useState } from 'react';
import type { Litter } from '../../core/litter/litter.ts';
import { run, useQuery } from '../data/query.ts';
import { useHouse } from '../facts/useLitterGrowth.ts';
import { go, href } from '../links.ts';
import { PageTitle } from '../parts/PageTitle.tsx';
import { words } from '../state/words.ts';
import { ImportColumns } from './ImportColumns.tsx';
import { ImportExportFile } from './ImportExportFile.tsx';
import { ImportRows } from './ImportRows.tsx';
import { ImportSource } from './ImportSource.tsx';
import { ImportWhere } from './ImportWhere.tsx';
import { ImportWho } from './ImportWho.tsx';
import { EMPTY_DRAFT, findingsOf, type ImportDraft, importInput, type Preview, previewOf, takenRows } from './import-draft.ts';
import './import.css';

/** What was chosen and answered when the page was left, so that nothing is lost by looking something up. */
let unfinished: ImportDraft | null = null;

const NO_LITTER = { sizeClass: null, breed: '', breedBirthGrams: null } as const;

/** A table of weights: chosen or pasted, understood, asked about, shown row by row, and only then written. */
export function ImportPage() {
  const [draft, setDraft] = useState(() => unfinished ?? EMPTY_DRAFT);
  const write = (next: ImportDraft) => {
    unfinished = next;
    setDraft(next);
  };
  const put = (change: Partial<ImportDraft>) => write({ ...draft, ...change });
  const preview = usePreview(draft);
  return (
    <>
      <PageTitle title={words.import.title} lead={words.import.lead}>
        <a href={href({ at: 'records' })}>{words.import.back}</a>
      </PageTitle>
      <ImportSource draft={draft} write={write} />
      {draft.exportFile !== null && <ImportExportFile whole={draft.exportFile} done={() => write(EMPTY_DRAFT)} />}
      {preview !== null && <Understood draft={draft} preview={preview} put={put} done={() => write(EMPTY_DRAFT)} />}
    </>
  );
}

/** The preview, with the readings of the litter that it goes into. */
function usePreview(draft: ImportDraft): Preview | null {
  const litters = useQuery('litter.all', {}).value?.litters;
  const house = useHouse();
  const guess = useMemo(() => previewOf(draft, litters ?? [], () => [], house), [draft, litters, house]);
  const readings = useReadings(guess?.into ?? 'new');
  return useMemo(
    () => (readings === null || litters === undefined ? null : previewOf(draft, litters, () => readings, house)),
    [draft, litters, readings, house],
  );
}

const NONE = [] as const;

function useReadings(into: string) {
  // A litter that is not there answers an error, which here means that nothing is written yet.
  const { status, value } = useQuery('growth.readings', { litterId: into === 'new' ? 'no-such-litter' : into });
  if (status === 'loading') return null;
  return value?.readings ?? NONE;
}

function Understood({
  draft,
  preview,
  put,
  done,
}: {
  draft: ImportDraft;
  preview: Preview;
  put: (change: Partial<ImportDraft>) => void;
  done: () => void;
}) {
  const litters = useQuery('litter.all', {}).value?.litters ?? NONE;
  const litter = litters.find((l) => l.litter.id === preview.into)?.litter ?? NO_LITTER;
  const findings = useFindings(draft, useDeferredValue(preview), litter);
  return (
    <>
      <ImportWhere draft={draft} preview={preview} put={put} />
      <ImportColumns draft={draft} preview={preview} put={put} />
      {preview.target !== null && preview.rows.length > 0 && (
        <>
          <ImportWho draft={draft} preview={preview} put={put} />
          <ImportRows draft={draft} preview={preview} put={put} findings={findings} />
          <Take draft={draft} preview={preview} findings={findings} done={done} />
        </>
      )}
    </>
  );
}

/** Reckoned again only when a weight, its puppy or its time has changed: over years of weights it takes a while. */
function useFindings(
  draft: ImportDraft,
  preview: Preview,
  litter: Pick<Litter, 'sizeClass' | 'breed' | 'breedBirthGrams'>,
): ReadonlyMap<number, string> {
  const house = useHouse();
  const last = useRef<{ key: string; findings: ReadonlyMap<number, string> } | null>(null);
  const weights = preview.rows.map((r) => [r.state.is, r.puppy, r.reading?.at, r.reading?.grams, r.reading?.session]);
  const key = JSON.stringify([preview.into, preview.form.whelpedAt, house.massUnit, house.scaleStepGrams, weights]);
  if (last.current?.key !== key) last.current = { key, findings: findingsOf(draft, preview, litter, house) };
  return last.current.findings;
}

function Take({
  draft,
  preview,
  findings,
  done,
}: {
  draft: ImportDraft;
  preview: Preview;
  findings: ReadonlyMap<number, string>;
  done: () => void;
}) {
  const [sending, setSending] = useState(false);
  const [refused, setRefused] = useState(false);
  const input = importInput(draft, preview, findings);
  const take = async () => {
    if (input === null || sending) return;
    setSending(true);
    setRefused(false);
    const answer = await run('records.import', input);
    setSending(false);
    if (!answer.ok) return setRefused(true);
    done();
    go({ at: 'litter', litterId: answer.value.litter.id, page: 'growth', puppyId: null });
  };
  return (
    <p className="import-take">
      <button type="button" className="button main" disabled={input === null || sending} onClick={() => void take()}>
        {words.import.take(takenRows(draft, preview, findings).length)}
      </button>
      <span role="status">
        {refused ? words.import.refusedAll : input === null ? words.import.notYet : words.import.takeNote}
      </span>
    </p>
  );
}
