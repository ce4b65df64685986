import { useState } from 'react';
import { clockOf, dateOf } from '../../core/calendar/clock.ts';
import type { CivilDate } from '../../core/calendar/day.ts';
import { isCurrent, type Reading } from '../../core/litter/litter.ts';
import { run } from '../data/query.ts';
import type { LitterGrowthFacts } from '../facts/useLitterGrowth.ts';
import { Why } from '../parts/Why.tsx';
import { words } from '../state/words.ts';
import type { RecordRow } from './puppy-days.ts';
import { ReadingMend } from './ReadingMend.tsx';

interface Props {
  rows: readonly RecordRow[];
  facts: LitterGrowthFacts;
  today: CivilDate;
  caption: string;
  /** Grams of the middle of the breeder's own line, by reading; the column is there when there are some. */
  line?: ReadonlyMap<string, number>;
}

const NO_LINE: ReadonlyMap<string, number> = new Map();

/** The figures behind the charts. Each is mended here, and a doubtful one answered. */
export function RecordTable({ rows, facts, today, caption, line = NO_LINE }: Props) {
  const suffix = words.unitShort[facts.house.massUnit];
  return (
    <table className="record">
      <caption className="unseen">{caption}</caption>
      <thead>
        <tr>
          <th scope="col">{words.growth.dayColumn}</th>
          <th scope="col" className="figure">
            {words.growth.weightColumn(suffix)}
          </th>
          <th scope="col" className="figure">
            {words.growth.gainColumn(suffix)}
          </th>
          <th scope="col" className="figure">
            {words.growth.standingColumn}
          </th>
          {line.size > 0 && (
            <th scope="col" className="figure own-line">
              {words.growth.lineColumn(suffix)}
            </th>
          )}
          <th scope="col" className="remark">
            {words.growth.remark}
          </th>
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <RecordLine key={row.reading.id} row={row} facts={facts} today={today} line={line} />
        ))}
      </tbody>
    </table>
  );
}

function RecordLine({ row, facts, today, line }: Required<Omit<Props, 'rows' | 'caption'>> & { row: RecordRow }) {
  const { reading, gain, standing } = row;
  const [open, setOpen] = useState(false);
  const unit = facts.house.massUnit;
  const current = isCurrent(reading);
  const figure = words.massFigure(reading.grams, unit);
  const ownLineGrams = line.get(reading.id);
  return (
    <>
      <tr>
        <th scope="row">
          {words.dayOfWeek(dateOf(reading.at))} <span className="note">{clockOf(reading.at)}</span>
        </th>
        <td className="figure weight">
          <Why
            explanation={{
              figure,
              how: `${words.growth.source[reading.source]} ${reading.typed === '' ? '' : `“${reading.typed}” `}${words.when(reading.at, today)}.`,
              sum: [],
            }}
          >
            <span className={current ? '' : 'struck'}>{figure}</span>
          </Why>
        </td>
        <td className="figure">{gain === null ? '' : words.signed(words.massFigure(Math.abs(gain), unit), gain)}</td>
        <td className="figure">{standing === null ? '' : words.standingFigure(standing)}</td>
        {line.size > 0 && <td className="figure">{ownLineGrams === undefined ? '' : words.massFigure(ownLineGrams, unit)}</td>}
        <td className="remark">
          {reading.withdrawn ? (
            words.growth.takenBack
          ) : reading.supersededBy !== null ? (
            words.growth.replaced
          ) : (
            <Remark reading={reading} />
          )}{' '}
          {current && (
            <button
              type="button"
              className="link mend-open"
              aria-expanded={open}
              aria-label={words.mend.openFor(figure, words.when(reading.at, today))}
              onClick={() => setOpen(!open)}
            >
              {words.mend.open}
            </button>
          )}
        </td>
      </tr>
      {open && current && (
        <tr>
          <td colSpan={line.size > 0 ? 6 : 5}>
            <ReadingMend reading={reading} facts={facts} close={() => setOpen(false)} />
          </td>
        </tr>
      )}
    </>
  );
}

function Remark({ reading }: { reading: Reading }) {
  if (!reading.held) return reading.session === 'birth' ? words.growth.session.birth : null;
  return (
    <>
      {words.answer.held}{' '}
      <button type="button" className="link" onClick={() => void run('growth.keep', { readingIds: [reading.id] })}>
        {words.answer.right}
      </button>{' '}
      <button type="button" className="link" onClick={() => void run('growth.withdraw', { readingId: reading.id })}>
        {words.answer.takeBack}
      </button>
    </>
  );
}
