import { useMemo, useRef } from 'react';
import type { Level } from '../../core/growth/assess.ts';
import type { Collar } from '../../core/litter/collar.ts';
import type { MassUnit } from '../../core/units/mass.ts';
import { href } from '../links.ts';
import { words } from '../state/words.ts';
import { CollarBand } from './CollarBand.tsx';
import { collarLabel } from './collar-words.ts';
import {
  DRIFT_TOP,
  type DriftItem,
  type DriftLayout,
  driftLayout,
  LEAD_GAP,
  LEAD_WEIGHT,
  type PlacedBand,
  percentOf,
  REMARK_SIZE,
} from './drift-layout.ts';
import { type Measure, useMeasure, useWidth } from './measure.ts';
import './parts.css';
import { TableHead } from './TableHead.tsx';

/** One puppy on the drift line. Standings are log ratios to the littermates' median, now and two days ago. */
export interface DriftPoint {
  readonly puppyId: string;
  readonly name: string;
  readonly collar: Collar;
  readonly standing: number;
  readonly before: number | null;
  readonly level: Level;
  /** Said in place of the level in the table, while there are too few weights for one. */
  readonly tooSoon?: string | null;
  /** Why, in one line, for watch and act; null says only where it stands: "6 % under, was 2 %". */
  readonly sentence: string | null;
  /** False during a weigh-in until this puppy has been weighed: drawn pale, at its last standing. */
  readonly weighedNow: boolean;
}

type Ends = typeof words.drift.litter | typeof words.drift.single;

/**
 * The littermates as collars on one scale of standing: steady ones above the line, those to watch or act on hang below it
 * with a sentence. `single` is for one puppy against its own expected line. Fills the width it is given.
 */
export function DriftLine({
  points,
  medianGrams,
  unit,
  single = false,
  linkTo = puppyHref,
}: {
  points: readonly DriftPoint[];
  medianGrams: number | null;
  unit: MassUnit;
  single?: boolean;
  linkTo?: (puppyId: string) => string;
}) {
  const box = useRef<HTMLDivElement>(null);
  const width = useWidth(box);
  const measure = useMeasure();
  const ends: Ends = single ? words.drift.single : words.drift.litter;
  const layout = useMemo(
    () =>
      width === 0 || points.length === 0
        ? null
        : driftLayout(
            points.map((p) => driftItem(p)),
            width,
            measure,
          ),
    [points, width, measure],
  );
  return (
    <div className="drift" ref={box}>
      {layout !== null && (
        <div className="drift-picture">
          <DriftGround
            layout={layout}
            ends={ends}
            middle={medianGrams === null ? ends.middleAlone : ends.middle(words.massText(medianGrams, unit))}
            points={points}
            measure={measure}
          />
          {/* a new width is a new line: only a new standing slides */}
          <div key={width}>
            {points.map((point) => (
              <DriftBand key={point.puppyId} point={point} layout={layout} to={linkTo(point.puppyId)} />
            ))}
          </div>
        </div>
      )}
      {points.length === 0 ? <p className="note">{words.drift.nobody}</p> : <DriftTable points={points} ends={ends} />}
    </div>
  );
}

function puppyHref(puppyId: string): string {
  return href({ at: 'puppy', puppyId, view: 'notes' });
}

const wholePercent = (standing: number): number => Math.round(percentOf(standing)) + 0;

function driftItem(point: DriftPoint): DriftItem {
  const brief =
    point.before === null
      ? words.drift.stands(wholePercent(point.standing))
      : words.drift.moved(wholePercent(point.standing), wholePercent(point.before));
  return {
    id: point.puppyId,
    percent: percentOf(point.standing),
    before: point.before === null ? null : percentOf(point.before),
    flagged: point.level !== 'steady',
    weighedNow: point.weighedNow,
    remark: { lead: words.level[point.level], text: point.sentence ?? brief },
  };
}

function DriftGround({
  layout,
  ends,
  middle,
  points,
  measure,
}: {
  layout: DriftLayout;
  ends: Ends;
  middle: string;
  points: readonly DriftPoint[];
  measure: Measure;
}) {
  const { width, height, lineY, middleX, narrow, ticks, bands } = layout;
  const hung = bands.filter((b) => b.flagged);
  const levelOf = (id: string) => points.find((p) => p.puppyId === id)?.level ?? 'watch';
  return (
    <svg width={width} height={height} viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
      {ticks.map((t) => (
        <path key={t.percent} className="grid" d={`M${t.x} ${DRIFT_TOP}V${height - (hung.length === 0 ? 20 : 4)}`} />
      ))}
      {ticks.map((t) => (
        <text key={t.percent} className="soft halo" x={t.x} y={lineY + 22} textAnchor="middle">
          {words.drift.tick(Math.abs(t.percent))}
        </text>
      ))}
      <path className="drift-middle" d={`M${middleX} ${DRIFT_TOP}V${lineY}`} />
      <text className="soft" x="0" y="13">
        {narrow ? ends.underShort : ends.under}
      </text>
      <text className="strong" x={middleX} y="13" textAnchor="middle">
        {middle}
      </text>
      <text className="soft" x={width} y="13" textAnchor="end">
        {narrow ? ends.overShort : ends.over}
      </text>
      {bands.map((b) => (b.flagged ? null : <path key={b.id} className="needle" d={`M${b.x} ${b.top + b.height}V${lineY}`} />))}
      {bands.map((b) =>
        b.beyond === null ? null : (
          <text
            key={b.id}
            className="strong halo"
            x={b.beyond < 0 ? b.x - 8 : b.x + 8}
            y={lineY - 6}
            textAnchor={b.beyond < 0 ? 'end' : 'start'}
          >
            {words.drift.tick(Math.abs(b.beyond))}
          </text>
        ),
      )}
      <path className="drift-ink" d={`M0 ${lineY}H${width}`} />
      {bands.map((b) => (b.flagged ? null : <SteadyMark key={b.id} band={b} lineY={lineY} />))}
      {hung.map((b) => (
        <path key={b.id} className={`needle ${levelOf(b.id)}`} d={`M${b.x} ${lineY + 12}V${b.top + 2}`} />
      ))}
      {hung.map((b) => (
        <HangingMark key={b.id} band={b} lineY={lineY} level={levelOf(b.id)} measure={measure} />
      ))}
    </svg>
  );
}

function SteadyMark({ band, lineY }: { band: PlacedBand; lineY: number }) {
  return (
    <>
      {band.tail !== null && <path className="tail" d={`M${band.tail.from} ${band.tail.y}H${band.tail.to}`} />}
      <circle className={band.weighedNow ? 'dot' : 'dot hollow'} cx={band.x} cy={lineY} r="3.6" />
    </>
  );
}

function HangingMark({ band, lineY, level, measure }: { band: PlacedBand; lineY: number; level: Level; measure: Measure }) {
  const { tail, x } = band;
  return (
    <g className={band.weighedNow ? level : `${level} waiting`}>
      <path className="pennant" d={`M${x - 6.5} ${lineY}L${x} ${lineY + 12}L${x + 6.5} ${lineY}Z`} />
      {tail !== null && (
        <>
          <path
            className="heavy"
            d={`M${tail.from} ${tail.y - 1.5}L${tail.to} ${tail.y - band.height * 0.26}V${tail.y + band.height * 0.26}L${tail.from} ${tail.y + 1.5}Z`}
          />
          <circle className="ring" cx={tail.from} cy={tail.y} r="4.4" />
        </>
      )}
      {band.texts.map((line) => (
        <text key={`${line.y}`} className="remark halo" x={line.x} y={line.y} fontSize={REMARK_SIZE}>
          {line.bold !== '' && <tspan className="lead">{line.bold}</tspan>}
          <tspan x={line.bold === '' ? line.x : line.x + measure(line.bold, REMARK_SIZE, LEAD_WEIGHT) + LEAD_GAP}>
            {line.text}
          </tspan>
        </text>
      ))}
    </g>
  );
}

function DriftBand({ point, layout, to }: { point: DriftPoint; layout: DriftLayout; to: string }) {
  const band = layout.bands.find((b) => b.id === point.puppyId);
  if (band === undefined) return null;
  return (
    <a
      className="drift-band"
      href={to}
      aria-label={collarLabel(point.collar, point.name)}
      style={{ transform: `translate(${band.left}px, ${band.top}px)` }}
    >
      <CollarBand collar={point.collar} height={band.height} faded={!point.weighedNow} label={null} />
    </a>
  );
}

/** The same facts for those who do not see the picture. */
function DriftTable({ points, ends }: { points: readonly DriftPoint[]; ends: Ends }) {
  return (
    <div className="unseen">
      <table>
        <caption>{ends.caption}</caption>
        <TableHead heads={[words.drift.puppy, words.drift.level, words.drift.now, words.drift.before, words.drift.remark]} />
        <tbody>
          {points.map((p) => (
            <tr key={p.puppyId}>
              <th scope="row">{collarLabel(p.collar, p.name)}</th>
              <td>{p.tooSoon ?? words.level[p.level]}</td>
              <td>{words.drift.place(wholePercent(p.standing), ends)}</td>
              <td>{p.before === null ? words.drift.unknown : words.drift.place(wholePercent(p.before), ends)}</td>
              <td>
                {[p.level === 'steady' ? null : p.sentence, p.weighedNow ? null : words.drift.notWeighed]
                  .filter((t) => t !== null)
                  .join(' ')}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
