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
import { OtherFolderPart } from './OtherFolderPart.tsx';
import { Way } from './Way.tsx';
import './rescue.css';

/** What only stands in the way: nothing is wrong with a file of hers. */
const BARRED: readonly Rescue['problem'][] = ['locked', 'read-only', 'disk-full', 'no-folder', 'stranger'];

/** The whole window while the data file can't be opened: what is wrong, and every way on. Nothing is lost by any of them. */
export function RescuePage({ rescue }: { rescue: Rescue }) {
  if (BARRED.includes(rescue.problem)) return <BarredPage rescue={rescue} />;
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

function BarredPage({ rescue }: { rescue: Rescue }) {
  return (
    <main className="rescue">
      <PageTitle title={words.rescue.titles[rescue.problem]} lead={words.rescue.leads[rescue.problem]} />
      <FactsTable className="rescue-where" rows={[[words.rescue.file, rescue.file]]} />
      <TryAgain />
      <OtherFolderPart rescue={rescue} />
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

function TryAgain() {
  const go = async () => {
    const answer = await run('records.tryAgain', {}, { quiet: true });
    return answer.ok && !answer.value.open ? words.rescue.stillSo : sentenceOf(answer);
  };
  return (
    <section className="part">
      <h2>{words.rescue.again}</h2>
      <p>{words.rescue.againNote}</p>
      <Way word={words.rescue.againNow} main go={go} />
    </section>
  );
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
