import { clockOf, dateOf } from '../../core/calendar/clock.ts';
import type { CivilDate } from '../../core/calendar/day.ts';
import { stands } from '../../core/litter/litter.ts';
import { type MassUnit, massFigure } from '../../core/units/mass.ts';
import { dayOfWeek, when } from '../../core/words/en/dates.ts';
import { answerWords, growthWords, signed, standingFigure } from '../../core/words/en/growth.ts';
import { run } from '../data/query.ts';
import { Why } from '../parts/Why.tsx';
import type { RecordRow } from './puppy-days.ts';

interface Props {
  rows: readonly RecordRow[];
  unit: MassUnit;
  today: CivilDate;
  caption: string;
  /** Grams of the middle of the breeder's own line, by reading; the column is there when there are some. */
  line?: ReadonlyMap<string, number>;
}

const NO_LINE: ReadonlyMap<string, number> = new Map();

/** The figures behind the charts. A doubtful reading is answered here too. */
export function RecordTable({ rows, unit, today, caption, line = NO_LINE }: Props) {
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
          {line.size > 0 && (
            <th scope="col" className="figure own-line">
              {growthWords.lineColumn(suffix)}
            </th>
          )}
          <th scope="col" className="remark">
            {growthWords.remark}
          </th>
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <RecordLine key={row.reading.id} row={row} unit={unit} today={today} line={line} />
        ))}
      </tbody>
    </table>
  );
}

function RecordLine({ row, unit, today, line }: Required<Omit<Props, 'rows' | 'caption'>> & { row: RecordRow }) {
  const { reading, gain, standing } = row;
  const standsNow = stands(reading);
  const figure = massFigure(reading.grams, unit);
  const middle = line.get(reading.id);
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
      {line.size > 0 && <td className="figure">{middle === undefined ? '' : massFigure(middle, unit)}</td>}
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
