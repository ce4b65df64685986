import { useId, useState } from 'react';
import { dateOf } from '../../core/calendar/clock.ts';
import type { LitterGrowth } from '../../core/growth/assess.ts';
import type { GrowthInput } from '../../core/growth/input.ts';
import { seriesOf } from '../../core/growth/series.ts';
import { isCurrent, type Puppy, puppyName } from '../../core/litter/litter.ts';
import { useToday } from '../data/now.ts';
import { type LitterGrowthFacts, useLitterGrowth } from '../facts/useLitterGrowth.ts';
import { weighingsCount } from '../facts/weighings-count.ts';
import { href } from '../links.ts';
import { CollarBand } from '../parts/CollarBand.tsx';
import { LitterWeightChart } from '../parts/charts/LitterWeightChart.tsx';
import { PageTitle } from '../parts/PageTitle.tsx';
import { words } from '../state/words.ts';
import { LitterDrift } from './LitterDrift.tsx';
import { PuppyLevel } from './PuppyLevel.tsx';
import { ReadingMend } from './ReadingMend.tsx';
import './growth.css';
import { TableHead } from '../parts/TableHead.tsx';

/** Everyone by day, and the table behind the picture. */
export function GrowthPage({ litterId }: { litterId: string }) {
  const facts = useLitterGrowth(litterId);
  const { litter, puppies, growth, input, house } = facts;
  const today = useToday();
  const tableId = useId();
  if (litter === null || growth === null || input === null) return null;
  const unit = house.massUnit;
  const suffix = words.unitShort[unit];
  const order = puppies.toSorted((a, b) => a.place - b.place);
  const lines = order
    .map((p) => ({ puppyId: p.id, name: puppyName(p), collar: p.collar, points: seriesOf(input, p.id) }))
    .filter((l) => l.points.length > 0);
  return (
    <>
      <PageTitle title={words.growth.growth} lead={words.growth.growthOf(words.litterName(litter))} />
      {lines.length === 0 ? (
        <p className="line soft">
          {words.growth.noReadings}{' '}
          <a href={href({ at: 'litter', litterId, page: 'weigh-in', puppyId: null })}>{words.growth.goWeigh}</a>
        </p>
      ) : (
        <>
          <div className="growth-chart">
            <LitterWeightChart lines={lines} unit={unit} describedBy={tableId} />
          </div>
          <LitterDrift
            litterId={litterId}
            puppies={puppies}
            growth={growth}
            input={input}
            unit={unit}
            today={today}
            weighedIds={null}
          />
        </>
      )}
      <table className="growth-table" id={tableId}>
        <TableHead
          heads={[
            words.growth.collar,
            words.growth.puppy,
            { head: words.growth.weightColumn(suffix), className: 'figure' },
            { head: `${words.growth.gainColumn(suffix)} ${words.growth.perDay}`, className: 'figure' },
            { head: words.growth.percentADay, className: 'figure' },
            { head: words.growth.standingColumn, className: 'figure' },
            { head: words.growth.levelColumn, className: 'remark' },
          ]}
        />
        <tbody>
          {order.map((puppy) => (
            <GrowthRow key={puppy.id} puppy={puppy} facts={facts} growth={growth} input={input} />
          ))}
        </tbody>
      </table>
    </>
  );
}

/** A puppy's figures; its last weight is mended from here. */
function GrowthRow({
  puppy,
  facts,
  growth,
  input,
}: {
  puppy: Puppy;
  facts: LitterGrowthFacts;
  growth: LitterGrowth;
  input: GrowthInput;
}) {
  const [open, setOpen] = useState(false);
  const today = useToday();
  const unit = facts.house.massUnit;
  const a = growth.puppies.get(puppy.id);
  const last = facts.readings.findLast((r) => r.puppyId === puppy.id && isCurrent(r) && r.at === a?.at) ?? null;
  const figure = a?.grams == null ? '' : words.massFigure(a.grams, unit);
  return (
    <>
      <tr>
        <td>
          <CollarBand collar={puppy.collar} height={24} label={null} />
        </td>
        <th scope="row">
          <a href={href({ at: 'puppy', puppyId: puppy.id, view: 'weight' })}>
            <bdi>{puppyName(puppy)}</bdi>
          </a>
        </th>
        <td className="figure">
          {last === null ? (
            figure
          ) : (
            <button
              type="button"
              className="link"
              aria-expanded={open}
              aria-label={words.mend.openFor(`${puppyName(puppy)}, ${figure}`, words.when(last.at, today))}
              onClick={() => setOpen(!open)}
            >
              {figure}
            </button>
          )}
        </td>
        <td className="figure">
          {a?.gain == null ? '' : words.signed(words.massFigure(Math.abs(a.gain.grams), unit), a.gain.grams)}
        </td>
        <td className="figure">{a?.gain == null ? '' : words.signed(Math.abs(a.gain.percent).toFixed(1), a.gain.percent)}</td>
        <td className="figure">{a?.standing == null ? '' : words.standingFigure(a.standing)}</td>
        <td className="remark">
          {puppy.state === 'home' || puppy.state === 'died' ? (
            <span className="soft">{words.growth.states[puppy.state]}</span>
          ) : a === undefined ? (
            ''
          ) : (
            <>
              <PuppyLevel level={a.level} known={weighingsCount(input, puppy.id)} />{' '}
              <span className="note">
                {a.level !== 'steady'
                  ? words.growthFinding.puppy(a.finding, unit)
                  : a.at === null || dateOf(a.at) === today
                    ? ''
                    : words.when(a.at, today)}
              </span>
            </>
          )}
        </td>
      </tr>
      {open && last !== null && (
        <tr>
          <td colSpan={7}>
            <ReadingMend reading={last} facts={facts} close={() => setOpen(false)} />
          </td>
        </tr>
      )}
    </>
  );
}
