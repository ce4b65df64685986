import { useState } from 'react';
import type { OutputOf } from '../../core/contract/operations.ts';
import type { Backup } from '../../core/contract/records.ts';
import { when } from '../../core/words/en/dates.ts';
import { keepingWords } from '../../core/words/en/keeping.ts';
import { doneSentence, recordsWords as w } from '../../core/words/en/records.ts';
import { localOf, useToday } from '../data/now.ts';
import { run, useQuery } from '../data/query.ts';
import { useHouse } from '../facts/useLitterGrowth.ts';
import { PageTitle } from '../parts/PageTitle.tsx';
import { ErasePart } from '../people/ErasePart.tsx';
import { ElsewherePart } from './ElsewherePart.tsx';
import { ExportPart } from './ExportPart.tsx';
import { FactsTable } from './FactsTable.tsx';
import { GoBack } from './GoBack.tsx';
import './records.css';

const FIRST_DONE = 20;
const MOST_DONE = 500;

/** Where the data is, its backups, and all that was done. */
export function RecordsPage() {
  const status = useQuery('records.status', {}).value;
  const [making, setMaking] = useState(false);
  const [said, setSaid] = useState('');
  const backUp = async () => {
    setMaking(true);
    setSaid(w.backingUp);
    const made = await run('records.backUp', {});
    setMaking(false);
    setSaid(made.ok ? w.backedUp(made.value.backup.file) : '');
  };
  return (
    <>
      <PageTitle title={w.title} lead={w.lead}>
        <button type="button" className="button main" disabled={making} onClick={() => void backUp()}>
          {w.backUp}
        </button>
      </PageTitle>
      <p className="records-said" role="status">
        {said}
      </p>
      {status === null ? <p className="soft">{w.loading}</p> : <Where status={status} />}
      {status !== null && <Backups backups={newestFirst(status.backups)} />}
      {status !== null && <Elsewhere canChoose={status.canChooseFolder} />}
      <ExportPart />
      <WhatWasDone />
      <ErasePart />
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
    [w.file, status.file],
    [w.size, w.bytesFigure(status.bytes)],
    [
      w.lastBackup,
      last === undefined ? w.noBackup : `${when(localOf(last.instant), today)}, ${last.checked ? w.checked : w.notChecked}`,
    ],
    [w.papers, status.papersFolder],
    [w.version, w.versionFigure(status.version)],
  ];
  if (status.demo) rows.push([w.demo, w.demoThere]);
  return (
    <section>
      <h2 className="unseen">{w.data}</h2>
      <FactsTable className="records-where" rows={rows} />
    </section>
  );
}

function Backups({ backups }: { backups: readonly Backup[] }) {
  const today = useToday();
  return (
    <section className="part">
      <h2>{w.backups}</h2>
      <p className="note records-note">{w.backupsNote}</p>
      <table className="records-backups">
        <thead>
          <tr>
            <th scope="col">{w.date}</th>
            <th scope="col">{w.kind}</th>
            <th scope="col" className="figure">
              {w.bytes}
            </th>
            <th scope="col">{w.state}</th>
            <th scope="col">{w.name}</th>
            <th scope="col">{w.goBack}</th>
          </tr>
        </thead>
        <tbody>
          {backups.length === 0 && (
            <tr>
              <td colSpan={6} className="soft">
                {w.noBackup}
              </td>
            </tr>
          )}
          {backups.map((b) => (
            <tr key={b.file}>
              <td>{when(localOf(b.instant), today)}</td>
              <td>{w.kinds[b.kind]}</td>
              <td className="figure">{w.bytesFigure(b.bytes)}</td>
              <td className={b.checked ? 'soft' : ''}>{b.checked ? w.checked : w.notChecked}</td>
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
      <h2>{keepingWords.elsewhere}</h2>
      <p className="note records-note">{keepingWords.elsewhereNote}</p>
      <ElsewherePart canChoose={canChoose} canCopy />
      <p className="note">{keepingWords.moving}</p>
    </section>
  );
}

/** The journal, latest first; what was undone is struck through and said. */
function WhatWasDone() {
  const [most, setMost] = useState(FIRST_DONE);
  const { massUnit } = useHouse();
  const today = useToday();
  const done = useQuery('records.done', { most }).value?.done;
  const status = useQuery('records.status', {}).value;
  const [undo, redo] = [status?.canUndo ?? null, status?.canRedo ?? null];
  return (
    <section className="part">
      <h2>{w.done}</h2>
      <p className="note records-note">{w.doneNote}</p>
      <p className="records-undo">
        {undo !== null && (
          <button type="button" className="button" onClick={() => void run('records.undo', {})}>
            {w.undo(doneSentence(undo, massUnit))}
          </button>
        )}
        {redo !== null && (
          <button type="button" className="button" onClick={() => void run('records.redo', {})}>
            {w.redo(doneSentence(redo, massUnit))}
          </button>
        )}
      </p>
      <ol className="records-done">
        {done?.length === 0 && <li className="line soft">{w.nothingDone}</li>}
        {(done ?? []).map((d) => (
          <li key={d.id} className="line">
            <span className="soft records-when">{when(localOf(d.instant), today)}</span>
            {d.undone ? (
              <span>
                <s className="struck">{doneSentence(d, massUnit)}</s> <span className="note">{w.undoneWord}</span>
              </span>
            ) : (
              <span>{doneSentence(d, massUnit)}</span>
            )}
          </li>
        ))}
      </ol>
      {done !== undefined && done.length >= most && most < MOST_DONE && (
        <button type="button" className="link" onClick={() => setMost(Math.min(MOST_DONE, most * 5))}>
          {w.more}
        </button>
      )}
    </section>
  );
}
