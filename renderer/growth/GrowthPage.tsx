import { useId } from 'react';
import { dateOf } from '../../core/calendar/clock.ts';
import { seriesOf } from '../../core/growth/series.ts';
import { puppyName } from '../../core/litter/litter.ts';
import { useToday } from '../data/now.ts';
import { useLitterGrowth } from '../facts/useLitterGrowth.ts';
import { weighingsCount } from '../facts/weighings-count.ts';
import { href } from '../links.ts';
import { CollarBand } from '../parts/CollarBand.tsx';
import { LitterWeightChart } from '../parts/LitterWeightChart.tsx';
import { PageTitle } from '../parts/PageTitle.tsx';
import { words } from '../state/words.ts';
import { LitterDrift } from './LitterDrift.tsx';
import { PuppyLevel } from './PuppyLevel.tsx';
import './growth.css';
import { TableHead } from '../parts/TableHead.tsx';

/** Everyone by day, and the table behind the picture. */
export function GrowthPage({ litterId }: { litterId: string }) {
  const { litter, puppies, growth, input, house } = useLitterGrowth(litterId);
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
          {order.map((puppy) => {
            const a = growth.puppies.get(puppy.id);
            return (
              <tr key={puppy.id}>
                <td>
                  <CollarBand collar={puppy.collar} height={24} label={null} />
                </td>
                <th scope="row">
                  <a href={href({ at: 'puppy', puppyId: puppy.id, view: 'weight' })}>
                    <bdi>{puppyName(puppy)}</bdi>
                  </a>
                </th>
                <td className="figure">{a?.grams == null ? '' : words.massFigure(a.grams, unit)}</td>
                <td className="figure">
                  {a?.gain == null ? '' : words.signed(words.massFigure(Math.abs(a.gain.grams), unit), a.gain.grams)}
                </td>
                <td className="figure">
                  {a?.gain == null ? '' : words.signed(Math.abs(a.gain.percent).toFixed(1), a.gain.percent)}
                </td>
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
            );
          })}
        </tbody>
      </table>
    </>
  );
}
