import { useState } from 'react';
import { addDays, daysBetween } from '../../core/calendar/day.ts';
import { TEXTURES, type Texture } from '../../core/weaning/texture.ts';
import { curveOn } from '../../core/weaning/weaning-findings.ts';
import { usualSteps, type WeaningPlan, weaningPlanSchema } from '../../core/weaning/weaning-plan.ts';
import { call } from '../data/host.ts';
import { run } from '../data/query.ts';
import type { Weaning } from '../facts/useWeaning.ts';
import { SavedChoice, SavedField } from '../parts/form/fields.tsx';
import { inTurn } from '../parts/form/in-turn.ts';
import { bad, good, readDate, readNumber } from '../parts/form/read.ts';
import { useWindow } from '../state/window.ts';
import { words } from '../state/words.ts';

const LONGEST_PLAN = 12;

/** Changes the plan that is stored now. Null when saved, else the sentence for where it was typed. */
function change(litterId: string, to: (plan: WeaningPlan) => WeaningPlan): Promise<string | null> {
  return inTurn(async () => {
    const now = await call('weaning.plan', { litterId });
    if (!now.ok) {
      useWindow.getState().setFailure(now.error);
      return words.form.notSaved;
    }
    if (now.value.plan === null) return words.form.notSaved;
    const plan = weaningPlanSchema.safeParse(to(now.value.plan));
    if (!plan.success) return words.weaning.stepsCross;
    const done = await run('weaning.setPlan', { litterId, plan: plan.data });
    return done.ok ? null : words.form.notSaved;
  });
}

const shareField = () => readNumber({ low: 1, high: 100, whole: true, unit: '%', example: words.weaning.shareExample });
const daysField = () => readNumber({ low: 1, high: 28, whole: true, example: words.weaning.daysExample });

/** The plan as a table that is edited in place; the planning curve stands beside it. */
export function WeaningPlanPart({
  weaning,
  spans,
}: {
  weaning: Weaning;
  spans: readonly { readonly from: number; readonly to: number }[];
}) {
  const { litter, plan, born, rules } = weaning;
  const [refused, setRefused] = useState<string | null>(null);
  if (plan === null) return null;
  const save = (to: (plan: WeaningPlan) => WeaningPlan) => change(litter.id, to);
  const act = (to: (plan: WeaningPlan) => WeaningPlan) => void save(to).then(setRefused);
  const dated = (text: string) => {
    const day = readDate(text);
    if (!day.ok) return day;
    const age = daysBetween(born, day.value);
    return age < 1 || age > 180 ? bad(words.weaning.firstBowlFault) : good(day.value);
  };
  return (
    <section className="part weaning-plan">
      <h2>{words.weaning.plan}</h2>
      <div className="form">
        <SavedField
          label={words.weaning.firstBowl}
          type="date"
          value={plan.starts}
          read={dated}
          save={(starts) => save((p) => ({ ...p, starts }))}
        />
        <SavedField
          label={words.weaning.liftMinutes}
          inputMode="numeric"
          value={String(plan.liftMinutes)}
          hint={words.weaning.liftNote(rules.liftAfterMinutes)}
          read={readNumber({ low: 5, high: 60, whole: true, example: '20' })}
          save={(liftMinutes) => save((p) => ({ ...p, liftMinutes }))}
        />
        <SavedField
          label={words.weaning.atOneBowl}
          inputMode="numeric"
          value={String(plan.atOneBowl)}
          read={readNumber({ low: 1, high: 16, whole: true, example: '4' })}
          save={(atOneBowl) => save((p) => ({ ...p, atOneBowl }))}
        />
      </div>
      <StepTable weaning={weaning} plan={plan} spans={spans} save={save} act={act} />
      <p className="note" role="status">
        {refused}
      </p>
      <p className="weaning-plan-ways">
        {plan.steps.length < LONGEST_PLAN && (
          <button type="button" className="link" onClick={() => act(withOneMore)}>
            {words.weaning.addStep}
          </button>
        )}
        <button
          type="button"
          className="link"
          onClick={() => act((p) => ({ ...p, steps: usualSteps(daysBetween(born, p.starts)) }))}
        >
          {words.weaning.usual}
        </button>
        <button type="button" className="link" onClick={() => void run('weaning.dropPlan', { litterId: litter.id })}>
          {words.weaning.drop}
        </button>
      </p>
      <p className="note">{words.weaning.curveNote}</p>
    </section>
  );
}

function StepTable(props: {
  weaning: Weaning;
  plan: WeaningPlan;
  spans: readonly { readonly from: number; readonly to: number }[];
  save: (to: (plan: WeaningPlan) => WeaningPlan) => Promise<string | null>;
  act: (to: (plan: WeaningPlan) => WeaningPlan) => void;
}) {
  const { weaning, plan, spans, save, act } = props;
  // The fields keep their place when a share or a length changes.
  const placed = plan.steps.map((step, place) => ({ step, place }));
  const options = TEXTURES.map((t) => ({ value: t, word: words.weaning.textures[t] }));
  return (
    <table className="step-table">
      <thead>
        <tr>
          <th scope="col">{words.weaning.fromDay}</th>
          <th scope="col">{words.weaning.share}</th>
          <th scope="col">{words.weaning.curve}</th>
          <th scope="col">{words.weaning.texture}</th>
          <th scope="col">{words.weaning.days}</th>
          <th scope="col">
            <span className="unseen">{words.weaning.removeStep(0).split(' ')[0]}</span>
          </th>
        </tr>
      </thead>
      <tbody>
        {placed.map(({ step, place: i }) => {
          const curve = curveOn(weaning.born, addDays(weaning.born, spans[i]?.from ?? 0));
          const set = (to: Partial<typeof step>) =>
            save((p) => ({ ...p, steps: p.steps.map((s, n) => (n === i ? { ...s, ...to } : s)) }));
          const last = i === plan.steps.length - 1;
          return (
            <tr key={i}>
              <th scope="row">{spans[i]?.from}</th>
              <td>
                <SavedField
                  inCell
                  label={words.weaning.stepOf(i + 1, words.weaning.share)}
                  inputMode="numeric"
                  value={String(Math.round(step.share * 100))}
                  hint="%"
                  read={shareField()}
                  save={(percent) => set({ share: percent / 100 })}
                />
              </td>
              <td className="soft">
                {curve === null
                  ? ''
                  : words.weaning.curveFigure(words.weaning.percent(curve.low), words.weaning.percent(curve.high))}
              </td>
              <td>
                <SavedChoice
                  inCell
                  label={words.weaning.stepOf(i + 1, words.weaning.texture)}
                  value={step.texture}
                  options={options}
                  save={(texture) => set({ texture: TEXTURES.find((t) => t === texture) ?? (step.texture satisfies Texture) })}
                />
              </td>
              <td>
                {last ? (
                  <span className="soft">{words.weaning.onwards}</span>
                ) : (
                  <SavedField
                    inCell
                    label={words.weaning.stepOf(i + 1, words.weaning.days)}
                    inputMode="numeric"
                    value={String(step.days)}
                    read={daysField()}
                    save={(days) => set({ days })}
                  />
                )}
              </td>
              <td>
                {!last && plan.steps.length > 1 && (
                  <button
                    type="button"
                    className="link"
                    aria-label={words.weaning.removeStep(i + 1)}
                    onClick={() => act((p) => ({ ...p, steps: p.steps.filter((_, n) => n !== i) }))}
                  >
                    ×
                  </button>
                )}
              </td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}

/** A step between the last two, halfway in share. */
function withOneMore(plan: WeaningPlan): WeaningPlan {
  const last = plan.steps.at(-1);
  if (last === undefined) return plan;
  const before = plan.steps.at(-2);
  const share = Math.round(50 * ((before?.share ?? 0) + 1)) / 100;
  const steps = [...plan.steps.slice(0, -1), { share, texture: before?.texture ?? last.texture, days: 3 }, last];
  return { ...plan, steps };
}
