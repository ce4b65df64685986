import { useState } from 'react';
import { addDays, daysBetween } from '../../core/calendar/day.ts';
import type { Result } from '../../core/contract/result.ts';
import { limitsIn, limitsOf } from '../../core/units/limits.ts';
import { TEXTURES, type Texture } from '../../core/weaning/texture.ts';
import { curveOn } from '../../core/weaning/weaning-findings.ts';
import type { StepsChange, WeaningPlan } from '../../core/weaning/weaning-plan.ts';
import { weaningPlanSchema, weaningStepSchema } from '../../core/weaning/weaning-plan.ts';
import { run } from '../data/query.ts';
import type { Weaning } from '../facts/useWeaning.ts';
import { SavedChoice, SavedField } from '../parts/form/fields.tsx';
import { bad, good, readDate, readNumber } from '../parts/form/read.ts';
import { TableHead } from '../parts/TableHead.tsx';
import { useWindow } from '../state/window.ts';
import { words } from '../state/words.ts';

const LONGEST_PLAN = 12;

type PlanChange = Partial<Omit<WeaningPlan, 'steps'>>;

/** Null when saved, else the sentence for where it was typed. */
async function changePlan(litterId: string, change: PlanChange): Promise<string | null> {
  return refusal(await run('weaning.changePlan', { litterId, change }, { quiet: true }));
}

async function changeSteps(litterId: string, to: StepsChange): Promise<string | null> {
  return refusal(await run('weaning.changeSteps', { litterId, to }, { quiet: true }));
}

function refusal(done: Result<unknown>): string | null {
  if (done.ok) return null;
  if (done.error.code === 'bad-input' && done.error.field?.startsWith('change.steps') === true) return words.weaning.stepsCross;
  useWindow.getState().setFailure(done.error);
  return words.form.notSaved;
}

const shareField = () =>
  readNumber({ ...limitsIn(weaningStepSchema.shape.share, 100), integer: true, unit: '%', example: words.weaning.shareExample });
const daysField = () => readNumber({ ...limitsOf(weaningStepSchema.shape.days), example: words.weaning.daysExample });

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
  const save = (change: PlanChange) => changePlan(litter.id, change);
  const saveSteps = (to: StepsChange) => changeSteps(litter.id, to);
  const act = (to: StepsChange) => void saveSteps(to).then(setRefused);
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
          save={(starts) => save({ starts })}
        />
        <SavedField
          label={words.weaning.liftMinutes}
          inputMode="numeric"
          value={String(plan.liftMinutes)}
          hint={words.weaning.liftNote(rules.liftAfterMinutes)}
          read={readNumber({ ...limitsOf(weaningPlanSchema.shape.liftMinutes), example: '20' })}
          save={(liftMinutes) => save({ liftMinutes })}
        />
        <SavedField
          label={words.weaning.atOneBowl}
          inputMode="numeric"
          value={String(plan.atOneBowl)}
          read={readNumber({ ...limitsOf(weaningPlanSchema.shape.atOneBowl), example: '4' })}
          save={(atOneBowl) => save({ atOneBowl })}
        />
      </div>
      <StepTable weaning={weaning} plan={plan} spans={spans} save={saveSteps} act={act} />
      <p className="note" role="status">
        {refused}
      </p>
      <p className="weaning-plan-ways">
        {plan.steps.length < LONGEST_PLAN && (
          <button type="button" className="link" onClick={() => act({ kind: 'add' })}>
            {words.weaning.addStep}
          </button>
        )}
        <button type="button" className="link" onClick={() => act({ kind: 'usual' })}>
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
  save: (to: StepsChange) => Promise<string | null>;
  act: (to: StepsChange) => void;
}) {
  const { weaning, plan, spans, save, act } = props;
  // The fields keep their place when a share or a length changes.
  const placed = plan.steps.map((step, place) => ({ step, place }));
  const options = TEXTURES.map((t) => ({ value: t, word: words.weaning.textures[t] }));
  return (
    <table className="step-table">
      <TableHead
        heads={[
          words.weaning.fromDay,
          words.weaning.share,
          words.weaning.curve,
          words.weaning.texture,
          words.weaning.days,
          { head: words.weaning.removeStep(0).split(' ')[0] ?? '', unseen: true },
        ]}
      />
      <tbody>
        {placed.map(({ step, place: i }) => {
          const curve = curveOn(weaning.born, addDays(weaning.born, spans[i]?.from ?? 0));
          const set = (to: Partial<typeof step>) => save({ kind: 'change', place: i, step: to });
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
                    onClick={() => act({ kind: 'remove', place: i })}
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
