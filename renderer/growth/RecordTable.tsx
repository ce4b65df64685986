import { clockOf, dateOf } from '../../core/calendar/clock.ts';
import type { CivilDate } from '../../core/calendar/day.ts';
import { isCurrent } from '../../core/litter/litter.ts';
import type { MassUnit } from '../../core/units/mass.ts';
import { run } from '../data/query.ts';
import { Why } from '../parts/Why.tsx';
import { words } from '../state/words.ts';
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
  const suffix = words.unitShort[unit];
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
          <RecordLine key={row.reading.id} row={row} unit={unit} today={today} line={line} />
        ))}
      </tbody>
    </table>
  );
}

function RecordLine({ row, unit, today, line }: Required<Omit<Props, 'rows' | 'caption'>> & { row: RecordRow }) {
  const { reading, gain, standing } = row;
  const current = isCurrent(reading);
  const figure = words.massFigure(reading.grams, unit);
  const ownLineGrams = line.get(reading.id);
  return (
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
        ) : reading.held ? (
          <>
            {words.answer.held}{' '}
            <button type="button" className="link" onClick={() => void run('growth.keep', { readingIds: [reading.id] })}>
              {words.answer.right}
            </button>{' '}
            <button type="button" className="link" onClick={() => void run('growth.withdraw', { readingId: reading.id })}>
              {words.answer.takeBack}
            </button>
          </>
        ) : (
          reading.session === 'birth' && words.growth.session.birth
        )}
      </td>
    </tr>
  );
}
