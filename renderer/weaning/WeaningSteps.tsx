import { useMemo, useRef } from 'react';
import type { Collar } from '../../core/litter/collar.ts';
import type { WeaningPlan } from '../../core/weaning/weaning-plan.ts';
import { CollarBand } from '../parts/CollarBand.tsx';
import { useMeasure, useWidth } from '../parts/measure.ts';
import { TableHead } from '../parts/TableHead.tsx';
import { words } from '../state/words.ts';
import { type StepsLayout, stepsLayout } from './weaning-steps.ts';

export interface Holding {
  readonly puppyId: string;
  readonly name: string;
  readonly collar: Collar;
  readonly share: number;
}

const COLLAR_HIGH = 18;

/** The steps as a stair: done soft, the present one dark with a big figure, who holds as a collar on a dashed line at its own height. */
export function WeaningSteps(props: {
  plan: WeaningPlan;
  /** Ages in days that each step runs from and to. */
  spans: readonly { readonly from: number; readonly to: number }[];
  nowStep: number | null;
  today: number;
  dam: string;
  holding: readonly Holding[];
}) {
  const { plan, spans, nowStep, today, dam } = props;
  const box = useRef<HTMLDivElement>(null);
  const width = useWidth(box);
  const measure = useMeasure();
  const layout = useMemo(
    () =>
      width === 0
        ? null
        : stepsLayout(
            plan,
            spans,
            nowStep,
            today,
            width,
            {
              percent: words.weaning.percent,
              texture: (t) => words.weaning.textures[t],
              day: words.weaning.dayTick,
              today: words.weaning.todayTick,
            },
            measure,
          ),
    [plan, spans, nowStep, today, width, measure],
  );
  return (
    <div className="weaning-steps" ref={box}>
      <p className="note">{words.weaning.pictureLead(dam)}</p>
      {layout !== null && <Picture layout={layout} {...props} />}
      <StepsTable plan={plan} spans={spans} />
    </div>
  );
}

function Picture({
  layout,
  plan,
  spans,
  nowStep,
  today,
  holding,
}: { layout: StepsLayout } & Omit<Parameters<typeof WeaningSteps>[0], 'dam'>) {
  const { width, height, base, steps, ticks, brackets, bracketTop } = layout;
  const now = steps.find((s) => s.when === 'now');
  const share = nowStep === null ? 0 : (plan.steps[nowStep]?.share ?? 0);
  const held = holding.map((h) => words.weaning.pictureHold(h.name, words.weaning.percent(h.share))).join('; ');
  const label = words.weaning.picture(words.weaning.percent(share), today, spans.at(-1)?.from ?? today, held);
  return (
    <svg viewBox={`0 0 ${width} ${height}`} width={width} height={height} role="img" aria-label={label}>
      {steps.map((s) => (
        <rect key={s.index} className={`step ${s.when}`} x={s.from} y={s.top} width={s.to - s.from + 0.3} height={base - s.top} />
      ))}
      {now !== undefined && <Held holding={holding} from={now.from} to={now.to} base={base} plan={plan} steps={steps} />}
      <path className="stair" d={stair(layout)} />
      <path className="ground" d={`M0 ${base}H${width}${ticks.map((t) => `M${t.x} ${base}v6`).join('')}`} />
      {steps.map((s) =>
        s.figure === null ? null : (
          <text key={s.index} className={`figure ${s.when}`} x={s.figure.x} y={s.top - 7} fontSize={s.figure.size}>
            {s.figure.text}
          </text>
        ),
      )}
      {ticks.map((t) => (
        <text key={t.x} className={t.now ? 'tick now' : 'tick'} x={t.x} y={base + 21} fontSize="14" textAnchor={t.anchor}>
          {t.text}
        </text>
      ))}
      {brackets.map((b) => (
        <g key={b.from}>
          <path className="bracket" d={`M${b.from} ${bracketTop + 5}v-5H${b.to}v5`} />
          {b.lines.map((line, i) => (
            <text key={line} className="texture" x={b.x} y={bracketTop + 14 + i * 15} fontSize="15" textAnchor={b.anchor}>
              {line}
            </text>
          ))}
        </g>
      ))}
    </svg>
  );
}

/** One dashed line a height that somebody holds, with their collars on it. */
function Held({
  holding,
  from,
  to,
  base,
  plan,
  steps,
}: {
  holding: readonly Holding[];
  from: number;
  to: number;
  base: number;
  plan: WeaningPlan;
  steps: StepsLayout['steps'];
}) {
  const heights = [...new Set(holding.map((h) => h.share))];
  return heights.map((share) => {
    const y = steps[plan.steps.findIndex((s) => s.share === share)]?.top ?? base;
    const here = holding.filter((h) => h.share === share);
    const wide = COLLAR_HIGH * 2.5 + 4;
    const room = Math.max(1, Math.floor((to - from) / wide));
    const shown = here.slice(0, room);
    const start = (from + to - shown.length * wide) / 2;
    return (
      <g key={share}>
        <path className="held" d={`M${from} ${y}H${to}`} />
        {shown.map((h, i) => (
          <svg
            key={h.puppyId}
            x={start + i * wide}
            y={Math.min(base - COLLAR_HIGH, y - COLLAR_HIGH / 2)}
            width={wide}
            height={COLLAR_HIGH}
          >
            <CollarBand collar={h.collar} height={COLLAR_HIGH} label={null} />
          </svg>
        ))}
      </g>
    );
  });
}

function stair({ steps, base }: StepsLayout): string {
  const [first, last] = [steps[0], steps.at(-1)];
  if (first === undefined || last === undefined) return '';
  return `M${first.from} ${base}${steps.map((s) => `V${s.top}H${s.to}`).join('')}V${base}`;
}

function StepsTable({ plan, spans }: Pick<Parameters<typeof WeaningSteps>[0], 'plan' | 'spans'>) {
  return (
    <table className="unseen">
      <caption>{words.weaning.stepsTable}</caption>
      <TableHead heads={[words.weaning.stepColumns.from, words.weaning.stepColumns.share, words.weaning.stepColumns.texture]} />
      <tbody>
        {plan.steps.map((s, i) => (
          <tr key={s.share}>
            <th scope="row">{spans[i]?.from}</th>
            <td>{words.weaning.percent(s.share)}</td>
            <td>{words.weaning.textures[s.texture]}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
