import { useMemo, useState } from 'react';
import { addDays, type CivilDate, daysBetween, parseDate } from '../../core/calendar/day.ts';
import { usualPlan, type WeaningPlan } from '../../core/weaning/weaning-plan.ts';
import { run } from '../data/query.ts';
import type { Weaning } from '../facts/useWeaning.ts';
import { FormField } from '../parts/form/fields.tsx';
import { words } from '../state/words.ts';
import { WeaningSteps } from './WeaningSteps.tsx';

const USUAL_AGE = 21;
const LATEST_AGE = 180;

/** The first bowl: one date, and what would follow from it. */
export function WeaningBegin({ weaning: { litter, born, today } }: { weaning: Weaning }) {
  const [text, setText] = useState<string>(() => {
    const usual = addDays(born, USUAL_AGE);
    return usual < today ? today : usual;
  });
  const [sentence, setSentence] = useState<string | null>(null);
  const starts = readStart(text, born);
  const plan = useMemo(() => (starts === null ? null : usualPlan(born, starts)), [born, starts]);
  const begin = async () => {
    if (plan === null) return setSentence(parseDate(text) === null ? words.form.notDate : words.weaning.firstBowlFault);
    await run('weaning.setPlan', { litterId: litter.id, plan });
  };
  return (
    <>
      <form
        className="form weaning-begin"
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          void begin();
        }}
      >
        <FormField
          label={words.weaning.firstBowl}
          hint={words.weaning.firstBowlHint}
          type="date"
          value={text}
          sentence={sentence}
          onChange={(typed) => {
            setText(typed);
            setSentence(null);
          }}
        />
        <p className="wide">
          <button type="submit" className="button main">
            {words.weaning.begin}
          </button>
        </p>
      </form>
      {plan !== null && (
        <>
          <p className="soft">{words.weaning.preview}</p>
          <WeaningSteps
            plan={plan}
            spans={spansOf(plan, daysBetween(born, plan.starts))}
            nowStep={null}
            today={daysBetween(born, today)}
            dam={litter.dam}
            holding={NOBODY}
          />
        </>
      )}
      <p className="note">{words.weaning.curveNote}</p>
    </>
  );
}

const NOBODY: readonly never[] = [];

function readStart(text: string, born: CivilDate): CivilDate | null {
  const day = parseDate(text);
  return day === null || day <= born || daysBetween(born, day) > LATEST_AGE ? null : day;
}

function spansOf(plan: WeaningPlan, startAge: number): { from: number; to: number }[] {
  let from = startAge;
  return plan.steps.map(({ days }) => {
    const span = { from, to: from + days };
    from = span.to;
    return span;
  });
}
