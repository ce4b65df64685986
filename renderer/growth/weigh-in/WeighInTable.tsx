import { dateOf } from '../../../core/calendar/clock.ts';
import { addDays, type CivilDate } from '../../../core/calendar/day.ts';
import type { Assessment } from '../../../core/growth/assess.ts';
import { puppyName } from '../../../core/litter/litter.ts';
import type { MassUnit } from '../../../core/units/mass.ts';
import { CollarBand } from '../../parts/CollarBand.tsx';
import { collarWords } from '../../parts/collar-words.ts';
import { LevelMark } from '../../parts/LevelMark.tsx';
import { Why } from '../../parts/Why.tsx';
import { words } from '../../state/words.ts';
import type { ScaleWeighing } from '../scale/useScaleWeighing.ts';
import { useNarrow } from '../useNarrow.ts';
import type { WeighInRow } from './rows.ts';
import type { WeighIn } from './useWeighIn.ts';
import './weigh-in.css';
import { TableHead } from '../../parts/TableHead.tsx';
import { explainGain } from './explain-gain.ts';
import { InHand, type Turn } from './InHandRow.tsx';

/** The puppies in their order, the one in hand open. */
export function WeighInTable({
  weighIn,
  scale,
  unit,
  turn,
  today,
}: {
  weighIn: WeighIn;
  scale: ScaleWeighing;
  unit: MassUnit;
  turn: Turn;
  today: CivilDate;
}) {
  const isToday = turn.time.day === today;
  const narrow = useNarrow();
  const { rows, inHandId } = weighIn;
  const at = rows.findIndex((r) => r.puppy.id === inHandId);
  const shown = narrow && at >= 0 ? rows.slice(Math.max(0, at - 2), at + 3) : rows;
  const suffix = words.unitShort[unit];
  const yesterday = addDays(today, -1);
  const allYesterday = isToday && rows.every((r) => r.before === null || dateOf(r.before.at) === yesterday);
  return (
    <div className="weigh-in-list">
      <table className="weigh-in-table">
        <TableHead
          heads={[
            words.growth.collar,
            words.growth.puppy,
            { head: allYesterday ? words.growth.yesterday(suffix) : words.growth.before(suffix), className: 'figure' },
            { head: isToday ? words.growth.today(suffix) : words.growth.now(suffix), className: 'figure' },
            { head: words.growth.gain, className: 'figure' },
            { head: words.growth.remark, className: 'remark' },
          ]}
        />
        <tbody>
          {shown.map((row) =>
            row.puppy.id === inHandId ? (
              <InHand key={row.puppy.id} row={row} weighIn={weighIn} scale={scale} unit={unit} turn={turn} />
            ) : (
              <Row key={row.puppy.id} row={row} weighIn={weighIn} unit={unit} today={today} />
            ),
          )}
        </tbody>
      </table>
    </div>
  );
}

function Row({ row, weighIn, unit, today }: { row: WeighInRow; weighIn: WeighIn; unit: MassUnit; today: CivilDate }) {
  const { puppy, grams, before } = row;
  const name = puppyName(puppy);
  const gain = grams === null || before === null || row.doubt !== null ? null : grams - before.grams;
  const assessment = weighIn.growth?.puppies.get(puppy.id) ?? null;
  return (
    <tr className={grams === null ? 'to-do' : row.unwritten === null ? 'done' : 'done not-in-file'}>
      <td>
        <button
          type="button"
          className="collar-button"
          tabIndex={-1}
          aria-label={words.growth.pickUp(name)}
          onClick={() => weighIn.take(puppy.id)}
        >
          <CollarBand collar={puppy.collar} height={26} label={null} />
        </button>
      </td>
      <th scope="row">
        <button type="button" className="row-button" tabIndex={-1} onClick={() => weighIn.take(puppy.id)}>
          <b>
            <bdi>{name}</bdi>
          </b>{' '}
          <span className="note">{collarWords(puppy.collar)}</span>
        </button>
      </th>
      <td className="figure soft">{before === null ? '' : words.massFigure(before.grams, unit)}</td>
      <td className="figure weight">
        {grams === null ? (
          ''
        ) : (
          <button
            type="button"
            className="row-button"
            tabIndex={-1}
            aria-label={words.growth.mendWeight(name, words.massText(grams, unit))}
            onClick={() => weighIn.take(puppy.id)}
          >
            <span className={row.doubt === null ? '' : 'held'}>{words.massFigure(grams, unit)}</span>
          </button>
        )}
      </td>
      <td className="figure">
        {gain === null || row.reading === null || row.unwritten !== null ? (
          ''
        ) : (
          <Why explanation={explainGain(row, grams ?? 0, row.reading.at, today, unit)}>
            {words.signed(words.massFigure(Math.abs(gain), unit), gain)}
          </Why>
        )}
      </td>
      <td className="remark">{grams !== null && <Remark row={row} assessment={assessment} unit={unit} />}</td>
    </tr>
  );
}

function Remark({ row, assessment, unit }: { row: WeighInRow; assessment: Assessment | null; unit: MassUnit }) {
  if (row.unwritten !== null && row.unwritten.state !== 'sending') {
    return (
      <b className="not-written">{row.unwritten.state === 'refused' ? words.growth.refusedWeight : words.growth.notWritten}</b>
    );
  }
  if (row.doubt !== null) return <span>? {words.growth.heldOut}</span>;
  if (row.unwritten !== null) return <span className="soft">{words.growth.onItsWay}</span>;
  if (assessment === null) return null;
  return (
    <>
      {/* The row shows the weight itself: only the first one needs a word in place of the level. */}
      {row.before === null && assessment.level === 'steady' ? (
        <span className="soft">{words.growth.firstWeight}</span>
      ) : (
        <LevelMark level={assessment.level} />
      )}
      {assessment.level !== 'steady' && <span className="because"> {words.growthFinding.puppy(assessment.finding, unit)}</span>}
    </>
  );
}
