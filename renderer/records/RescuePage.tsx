import { useState } from 'react';
import type { Counts, Rescue } from '../../core/contract/records.ts';
import type { Result } from '../../core/contract/result.ts';
import { localOf, useToday } from '../data/now.ts';
import { run } from '../data/query.ts';
import { PageTitle } from '../parts/PageTitle.tsx';
import { useWindow } from '../state/window.ts';
import { words } from '../state/words.ts';
import { ElsewherePart } from './ElsewherePart.tsx';
import { FactsTable } from './FactsTable.tsx';
import { GoBack, goBackTo } from './GoBack.tsx';
import './rescue.css';

/** The whole window while the data file is not in order: what is wrong, and every way on. Nothing is lost by any of them. */
export function RescuePage({ rescue }: { rescue: Rescue }) {
  return (
    <main className="rescue">
      <PageTitle title={words.rescue.titles[rescue.problem]} lead={words.rescue.leads[rescue.problem]} />
      <WhatIsThere rescue={rescue} />
      {(rescue.problem === 'changed' || rescue.problem === 'older') && <AsItIs />}
      <NewestBackup rescue={rescue} />
      <WhatCanBeRead rescue={rescue} />
      <OtherBackups rescue={rescue} />
      <BeginAnew />
    </main>
  );
}

function useCountsText(): (counts: Counts) => string {
  const today = useToday();
  return (counts) =>
    words.countsText(counts, counts.lastReading === null ? null : words.when(localOf(counts.lastReading), today));
}

function WhatIsThere({ rescue }: { rescue: Rescue }) {
  const inWords = useCountsText();
  const rows: [string, string][] = [
    [words.rescue.file, rescue.file],
    [words.rescue.size, words.records.bytesFigure(rescue.bytes)],
    [words.rescue.readable, isEmpty(rescue.readable) ? words.rescue.readsNothing : inWords(rescue.readable)],
  ];
  return <FactsTable className="rescue-where" rows={rows} />;
}

function isEmpty(counts: Counts | null): counts is null {
  return counts === null || counts.litters + counts.puppies + counts.readings === 0;
}

/** A button that works for a while and says how it went, in its own place. */
function Way({ word, main, go }: { word: string; main: boolean; go: () => Promise<string | null> }) {
  const [said, setSaid] = useState('');
  const [working, setWorking] = useState(false);
  const start = async () => {
    setWorking(true);
    setSaid(words.rescue.working);
    const failure = await go();
    setWorking(false);
    setSaid(failure ?? '');
  };
  return (
    <p className="keeping-do">
      <button type="button" className={main ? 'button main' : 'button'} disabled={working} onClick={() => void start()}>
        {word}
      </button>
      <span role="status">{said}</span>
    </p>
  );
}

function newestGood(rescue: Rescue) {
  return rescue.backups.find((b) => b.backup.checked) ?? null;
}

function NewestBackup({ rescue }: { rescue: Rescue }) {
  const inWords = useCountsText();
  const today = useToday();
  const newest = newestGood(rescue);
  if (newest === null || newest.counts === null) {
    return (
      <section className="part">
        <h2>{words.rescue.back}</h2>
        <p>{words.rescue.noBackup}</p>
      </section>
    );
  }
  const { backup, counts } = newest;
  return (
    <section className="part">
      <h2>{words.rescue.back}</h2>
      <p>
        {words.rescue.backMade(words.when(localOf(backup.instant), today), inWords(counts))}{' '}
        {missingText(rescue, newest.missing, (instant) => words.when(localOf(instant), today))}
      </p>
      <Way word={words.rescue.backNow} main go={() => goBackTo(null, backup.file)} />
    </section>
  );
}

function missingText(rescue: Rescue, missing: number | null, at: (instant: number) => string): string {
  if (missing === null || isEmpty(rescue.readable)) return words.rescue.missingUnknown;
  return words.rescue.missing(missing, rescue.readable.lastReading === null ? null : at(rescue.readable.lastReading));
}

function WhatCanBeRead({ rescue }: { rescue: Rescue }) {
  const inWords = useCountsText();
  if (rescue.problem === 'changed' || rescue.problem === 'older') return null;
  return (
    <section className="part">
      <h2>{words.rescue.take}</h2>
      {isEmpty(rescue.readable) ? (
        <p>{words.rescue.takeNothing}</p>
      ) : (
        <>
          <p>{words.rescue.takeNote(inWords(rescue.readable))}</p>
          <Way word={words.rescue.takeNow} main={newestGood(rescue) === null} go={salvage} />
        </>
      )}
    </section>
  );
}

async function salvage(): Promise<string | null> {
  const answer = await run('records.salvage', {}, { quiet: true });
  if (!answer.ok) return sentenceOf(answer);
  const { kept, leftOut, fromBackups } = answer.value;
  useWindow.getState().explain({ figure: words.rescue.took, how: words.rescue.tookHow(kept, leftOut, fromBackups), sum: [] });
  return null;
}

function AsItIs() {
  const go = async () => sentenceOf(await run('records.takeAsItIs', {}, { quiet: true }));
  return (
    <section className="part">
      <h2>{words.rescue.asItIs}</h2>
      <p>{words.rescue.asItIsNote}</p>
      <Way word={words.rescue.asItIsNow} main={false} go={go} />
    </section>
  );
}

function BeginAnew() {
  const go = async () => sentenceOf(await run('records.beginAnew', {}, { quiet: true }));
  return (
    <section className="part">
      <h2>{words.rescue.anew}</h2>
      <p>{words.rescue.anewNote}</p>
      <Way word={words.rescue.anewNow} main={false} go={go} />
    </section>
  );
}

function sentenceOf(result: Result<unknown>): string | null {
  return result.ok ? null : words.keeping.failed(result.error.code);
}

function OtherBackups({ rescue }: { rescue: Rescue }) {
  const inWords = useCountsText();
  const today = useToday();
  const newest = newestGood(rescue);
  const others = rescue.backups.filter((b) => b !== newest);
  return (
    <section className="part">
      <h2>{words.rescue.others}</h2>
      <ul className="keeping-found">
        {others.map(({ backup, counts }) => (
          <li key={backup.file} className="line">
            <span className="keeping-when">{words.when(localOf(backup.instant), today)}</span>
            <span className="soft">{counts === null ? words.rescue.notWhole : inWords(counts)}</span>
            <GoBack folder={null} backup={backup} />
          </li>
        ))}
      </ul>
      <p>{words.rescue.fromElsewhere}</p>
      <ElsewherePart canChoose={rescue.canChooseFolder} canCopy={false} />
    </section>
  );
}
