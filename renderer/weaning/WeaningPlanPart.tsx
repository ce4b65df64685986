import { useState } from 'react';
import { addDays, daysBetween } from '../../core/calendar/day.ts';
import { TEXTURES, type Texture } from '../../core/weaning/texture.ts';
import { usualSteps, type WeaningPlan, weaningPlanSchema } from '../../core/weaning/weaning-plan.ts';
import { curveOn } from '../../core/weaning/weaning-words.ts';
import { formWords } from '../../core/words/en/form.ts';
import { weaningWords as w } from '../../core/words/en/weaning.ts';
import { call } from '../data/host.ts';
import { run } from '../data/query.ts';
import type { Weaning } from '../facts/useWeaning.ts';
import { SavedChoice, SavedField } from '../parts/form/fields.tsx';
import { inTurn } from '../parts/form/in-turn.ts';
import { bad, good, readDate, readNumber } from '../parts/form/read.ts';
import { useWindow } from '../state/window.ts';

const LONGEST_PLAN = 12;

/** Changes the plan that is stored now. Null when saved, else the sentence for where it was typed. */
function change(litterId: string, to: (plan: WeaningPlan) => WeaningPlan): Promise<string | null> {
  return inTurn(async () => {
    const now = await call('weaning.plan', { litterId });
    if (!now.ok) {
      useWindow.getState().setFailure(now.error);
      return formWords.notSaved;
    }
    if (now.value.plan === null) return formWords.notSaved;
    const plan = weaningPlanSchema.safeParse(to(now.value.plan));
    if (!plan.success) return w.stepsCross;
    const done = await run('weaning.setPlan', { litterId, plan: plan.data });
    return done.ok ? null : formWords.notSaved;
  });
}

const shareField = readNumber({ low: 1, high: 100, whole: true, unit: '%', example: w.shareExample });
const daysField = readNumber({ low: 1, high: 28, whole: true, example: w.daysExample });

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
    return age < 1 || age > 180 ? bad(w.firstBowlFault) : good(day.value);
  };
  return (
    <section className="part weaning-plan">
      <h2>{w.plan}</h2>
      <div className="form">
        <SavedField
          label={w.firstBowl}
          type="date"
          value={plan.starts}
          read={dated}
          save={(starts) => save((p) => ({ ...p, starts }))}
        />
        <SavedField
          label={w.liftMinutes}
          inputMode="numeric"
          value={String(plan.liftMinutes)}
          hint={w.liftNote(rules.liftAfterMinutes)}
          read={readNumber({ low: 5, high: 60, whole: true, example: '20' })}
          save={(liftMinutes) => save((p) => ({ ...p, liftMinutes }))}
        />
        <SavedField
          label={w.atOneBowl}
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
            {w.addStep}
          </button>
        )}
        <button
          type="button"
          className="link"
          onClick={() => act((p) => ({ ...p, steps: usualSteps(daysBetween(born, p.starts)) }))}
        >
          {w.usual}
        </button>
        <button type="button" className="link" onClick={() => void run('weaning.dropPlan', { litterId: litter.id })}>
          {w.drop}
        </button>
      </p>
      <p className="note">{w.curveNote}</p>
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
  const options = TEXTURES.map((t) => ({ value: t, word: w.textures[t] }));
  return (
    <table className="step-table">
      <thead>
        <tr>
          <th scope="col">{w.fromDay}</th>
          <th scope="col">{w.share}</th>
          <th scope="col">{w.curve}</th>
          <th scope="col">{w.texture}</th>
          <th scope="col">{w.days}</th>
          <th scope="col">
            <span className="unseen">{w.removeStep(0).split(' ')[0]}</span>
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
                  label={w.stepOf(i + 1, w.share)}
                  inputMode="numeric"
                  value={String(Math.round(step.share * 100))}
                  hint="%"
                  read={shareField}
                  save={(percent) => set({ share: percent / 100 })}
                />
              </td>
              <td className="soft">{curve === null ? '' : w.curveFigure(w.percent(curve.low), w.percent(curve.high))}</td>
              <td>
                <SavedChoice
                  inCell
                  label={w.stepOf(i + 1, w.texture)}
                  value={step.texture}
                  options={options}
                  save={(texture) => set({ texture: TEXTURES.find((t) => t === texture) ?? (step.texture satisfies Texture) })}
                />
              </td>
              <td>
                {last ? (
                  <span className="soft">{w.onwards}</span>
                ) : (
                  <SavedField
                    inCell
                    label={w.stepOf(i + 1, w.days)}
                    inputMode="numeric"
                    value={String(step.days)}
                    read={daysField}
                    save={(days) => set({ days })}
                  />
                )}
              </td>
              <td>
                {!last && plan.steps.length > 1 && (
                  <button
                    type="button"
                    className="link"
                    aria-label={w.removeStep(i + 1)}
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
