import type { ReactNode } from 'react';
import { useState } from 'react';
import type { OutputOf } from '../../core/contract/operations.ts';
import type { Backup } from '../../core/contract/records.ts';
import { localOf, useToday } from '../data/now.ts';
import { run, useQuery } from '../data/query.ts';
import { useHouse } from '../facts/useLitterGrowth.ts';
import { PageTitle } from '../parts/PageTitle.tsx';
import { words } from '../state/words.ts';
import { ElsewherePart } from './ElsewherePart.tsx';
import { ExportPart } from './ExportPart.tsx';
import { FactsTable } from './FactsTable.tsx';
import { FaultsPart } from './FaultsPart.tsx';
import { GoBack } from './GoBack.tsx';
import './records.css';
import { TableHead } from '../parts/TableHead.tsx';

const FIRST_DONE = 20;
const MOST_DONE = 500;

/** Where the data is, its backups, and all that was done. */
export function RecordsPage({ erase }: { erase: ReactNode }) {
  const status = useQuery('records.status', {}).value;
  const [making, setMaking] = useState(false);
  const [said, setSaid] = useState('');
  const backUp = async () => {
    setMaking(true);
    setSaid(words.records.backingUp);
    const made = await run('records.backUp', {});
    setMaking(false);
    setSaid(made.ok ? words.records.backedUp(made.value.backup.file) : '');
  };
  return (
    <>
      <PageTitle title={words.records.title} lead={words.records.lead}>
        <button type="button" className="button main" disabled={making} onClick={() => void backUp()}>
          {words.records.backUp}
        </button>
      </PageTitle>
      <p className="records-said" role="status">
        {said}
      </p>
      {status === null ? <p className="soft">{words.records.loading}</p> : <Where status={status} />}
      {status !== null && <Backups backups={newestFirst(status.backups)} />}
      {status !== null && <Elsewhere canChoose={status.canChooseFolder} />}
      <ExportPart />
      <WhatWasDone />
      <FaultsPart />
      {erase}
    </>
  );
}

function newestFirst(backups: readonly Backup[]): Backup[] {
  return [...backups].sort((a, b) => b.instant - a.instant);
}

function Where({ status }: { status: OutputOf<'records.status'> }) {
  const today = useToday();
  const last = newestFirst(status.backups)[0];
  const rows: [string, string][] = [
    [words.records.file, status.file],
    [words.records.size, words.records.bytesFigure(status.bytes)],
    [
      words.records.lastBackup,
      last === undefined
        ? words.records.noBackup
        : `${words.when(localOf(last.instant), today)}, ${last.checked ? words.records.checked : words.records.notChecked}`,
    ],
    [words.records.papers, status.papersFolder],
    [words.records.version, words.records.versionFigure(status.version)],
  ];
  if (status.demo) rows.push([words.records.demo, words.records.demoThere]);
  return (
    <section>
      <h2 className="unseen">{words.records.data}</h2>
      <FactsTable className="records-where" rows={rows} />
    </section>
  );
}

function Backups({ backups }: { backups: readonly Backup[] }) {
  const today = useToday();
  return (
    <section className="part">
      <h2>{words.records.backups}</h2>
      <p className="note records-note">{words.records.backupsNote}</p>
      <table className="records-backups">
        <TableHead
          heads={[
            words.records.date,
            words.records.kind,
            { head: words.records.bytes, className: 'figure' },
            words.records.state,
            words.records.name,
            words.records.goBack,
          ]}
        />
        <tbody>
          {backups.length === 0 && (
            <tr>
              <td colSpan={6} className="soft">
                {words.records.noBackup}
              </td>
            </tr>
          )}
          {backups.map((b) => (
            <tr key={b.file}>
              <td>{words.when(localOf(b.instant), today)}</td>
              <td>{words.records.kinds[b.kind]}</td>
              <td className="figure">{words.records.bytesFigure(b.bytes)}</td>
              <td className={b.checked ? 'soft' : ''}>{b.checked ? words.records.checked : words.records.notChecked}</td>
              <td className="records-file">{b.file}</td>
              <td>
                <GoBack folder={null} backup={b} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

function Elsewhere({ canChoose }: { canChoose: boolean }) {
  return (
    <section className="part">
      <h2>{words.keeping.elsewhere}</h2>
      <p className="note records-note">{words.keeping.elsewhereNote}</p>
      <ElsewherePart canChoose={canChoose} canCopy />
      <p className="note">{words.keeping.moving}</p>
    </section>
  );
}

/** The journal, latest first; what was undone is struck through and said. */
function WhatWasDone() {
  const [limit, setLimit] = useState(FIRST_DONE);
  const { massUnit } = useHouse();
  const today = useToday();
  const done = useQuery('records.done', { limit: limit }).value?.done;
  const status = useQuery('records.status', {}).value;
  const [undo, redo] = [status?.canUndo ?? null, status?.canRedo ?? null];
  return (
    <section className="part">
      <h2>{words.records.done}</h2>
      <p className="note records-note">{words.records.doneNote}</p>
      <p className="records-undo">
        {undo !== null && (
          <button type="button" className="button" onClick={() => void run('records.undo', {})}>
            {words.records.undo(words.doneSentence(undo, massUnit))}
          </button>
        )}
        {redo !== null && (
          <button type="button" className="button" onClick={() => void run('records.redo', {})}>
            {words.records.redo(words.doneSentence(redo, massUnit))}
          </button>
        )}
      </p>
      <ol className="records-done">
        {done?.length === 0 && <li className="line soft">{words.records.nothingDone}</li>}
        {(done ?? []).map((d) => (
          <li key={d.id} className="line">
            <span className="soft records-when">{words.when(localOf(d.instant), today)}</span>
            {d.undone ? (
              <span>
                <s className="struck">{words.doneSentence(d, massUnit)}</s>{' '}
                <span className="note">{words.records.undoneWord}</span>
              </span>
            ) : (
              <span>{words.doneSentence(d, massUnit)}</span>
            )}
          </li>
        ))}
      </ol>
      {done !== undefined && done.length >= limit && limit < MOST_DONE && (
        <button type="button" className="link" onClick={() => setLimit(Math.min(MOST_DONE, limit * 5))}>
          {words.records.more}
        </button>
      )}
    </section>
  );
}
