import { clockOf, dateOf } from '../../core/calendar/clock.ts';
import type { CivilDate } from '../../core/calendar/day.ts';
import { stands } from '../../core/litter/litter.ts';
import { type MassUnit, massFigure } from '../../core/units/mass.ts';
import { Why } from '../app/Why.tsx';
import { run } from '../data/query.ts';
import { dayOfWeek, when } from '../words/en/dates.ts';
import { answerWords, growthWords, signed, standingFigure } from '../words/en/growth.ts';
import type { RecordRow } from './puppy-days.ts';

interface Props {
  rows: readonly RecordRow[];
  unit: MassUnit;
  today: CivilDate;
  caption: string;
}

/** The figures behind the charts. A doubtful reading is answered here too. */
export function RecordTable({ rows, unit, today, caption }: Props) {
  const suffix = unit === 'lboz' ? 'lb oz' : unit;
  return (
    <table className="record">
      <caption className="unseen">{caption}</caption>
      <thead>
        <tr>
          <th scope="col">{growthWords.dayColumn}</th>
          <th scope="col" className="figure">
            {growthWords.weightColumn(suffix)}
          </th>
          <th scope="col" className="figure">
            {growthWords.gainColumn(suffix)}
          </th>
          <th scope="col" className="figure">
            {growthWords.standingColumn}
          </th>
          <th scope="col" className="remark">
            {growthWords.remark}
          </th>
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <RecordLine key={row.reading.id} row={row} unit={unit} today={today} />
        ))}
      </tbody>
    </table>
  );
}

function RecordLine({ row, unit, today }: { row: RecordRow; unit: MassUnit; today: CivilDate }) {
  const { reading, gain, standing } = row;
  const standsNow = stands(reading);
  const figure = massFigure(reading.grams, unit);
  return (
    <tr>
      <th scope="row">
        {dayOfWeek(dateOf(reading.at))} <span className="note">{clockOf(reading.at)}</span>
      </th>
      <td className="figure weight">
        <Why
          explanation={{
            figure,
            how: `${growthWords.source[reading.source]} ${reading.typed === '' ? '' : `“${reading.typed}” `}${when(reading.at, today)}.`,
            sum: [],
          }}
        >
          <span className={standsNow ? '' : 'struck'}>{figure}</span>
        </Why>
      </td>
      <td className="figure">{gain === null ? '' : signed(massFigure(Math.abs(gain), unit), gain)}</td>
      <td className="figure">{standing === null ? '' : standingFigure(standing)}</td>
      <td className="remark">
        {reading.withdrawn ? (
          growthWords.takenBack
        ) : reading.supersededBy !== null ? (
          growthWords.replaced
        ) : reading.held ? (
          <>
            {answerWords.held}{' '}
            <button type="button" className="link" onClick={() => void run('growth.keep', { readingId: reading.id })}>
              {answerWords.right}
            </button>{' '}
            <button type="button" className="link" onClick={() => void run('growth.withdraw', { readingId: reading.id })}>
              {answerWords.takeBack}
            </button>
          </>
        ) : (
          reading.session === 'birth' && growthWords.session.birth
        )}
      </td>
    </tr>
  );
}
