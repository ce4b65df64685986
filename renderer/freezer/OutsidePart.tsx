import { type FormEvent, type RefObject, useState } from 'react';
import { dateOf, parseLocalTime } from '../../core/calendar/clock.ts';
import { portionGrams } from '../../core/food/portion.ts';
import { oldestFirst, type Pack, THAW_WAYS, type ThawWay } from '../../core/freezer/pack.ts';
import { thawClock } from '../../core/freezer/thawing.ts';
import { instantOf, now } from '../data/now.ts';
import { run } from '../data/query.ts';
import { takesText } from '../facts/freezer-text.ts';
import type { Freezer } from '../facts/useFreezer.ts';
import { words } from '../state/words.ts';
import { Choice, Field } from './Field.tsx';

/** A pack that came out without the plan. On the counter it can only be written down afterwards, and then two hours hold. */
export function OutsidePart({ f, heading }: { f: Freezer; heading: RefObject<HTMLHeadingElement | null> }) {
  const packs = choicesOf(f);
  const [packId, setPackId] = useState('');
  const [portions, setPortions] = useState('');
  const [way, setWay] = useState<ThawWay>('refrigerator');
  const [when, setWhen] = useState<string | null>(null);
  const [mistake, setMistake] = useState<{ field: 'portions' | 'when'; sentence: string } | null>(null);
  const [said, setSaid] = useState('');
  const pack = packs.find((p) => p.id === packId) ?? packs[0];
  const submit = async (event: FormEvent) => {
    event.preventDefault();
    if (pack === undefined) return;
    const count = portions.trim() === '' ? pack.left : Number(portions);
    if (!Number.isInteger(count) || count < 1 || count > pack.left)
      return setMistake({ field: 'portions', sentence: words.freezer.tooManyPortions(pack.left) });
    const at = parseLocalTime(when ?? now().local);
    if (at === null) return setMistake({ field: 'when', sentence: words.form.notDate });
    if (at > now().local)
      return setMistake({ field: 'when', sentence: way === 'counter' ? words.freezer.notPlanned : words.freezer.later });
    if (dateOf(at) < pack.frozenOn)
      return setMistake({ field: 'when', sentence: words.freezer.beforeFrozen(words.shortDate(pack.frozenOn, f.today)) });
    setMistake(null);
    const done = await run('freezer.thaw', { takes: [{ packId: pack.id, portions: count }], at, instant: instantOf(at), way });
    if (!done.ok) return;
    const clock = thawClock(f.rules, way, at, portionGrams(pack) / 1000);
    const take = { packId: pack.id, portions: count, of: pack.portions, grams: portionGrams(pack) * count };
    setSaid(words.freezer.written(takesText(f, [take]), words.timeNear(clock.useBy, f.today)));
    setPortions('');
    setWhen(null);
  };
  return (
    <section className="part">
      <h2 ref={heading} tabIndex={-1}>
        {words.freezer.outside}
      </h2>
      <p className="soft">{words.freezer.outsideLead}</p>
      {pack === undefined ? (
        <p className="line soft">{words.freezer.empty}</p>
      ) : (
        <form className="freezer-form" onSubmit={(event) => void submit(event)}>
          <Choice
            label={words.freezer.which}
            value={pack.id}
            options={packs.map((p) => ({ value: p.id, word: packWord(f, p) }))}
            onChange={(id) => {
              setPackId(id);
              setPortions('');
            }}
          />
          {pack.left > 1 && (
            <Field
              label={words.freezer.howManyPortions}
              size="short"
              inputMode="numeric"
              hint={portions === '' ? words.freezer.whole : ''}
              value={portions}
              mistake={mistake?.field === 'portions' ? mistake.sentence : null}
              onChange={setPortions}
            />
          )}
          <Choice
            label={words.freezer.way}
            value={way}
            options={THAW_WAYS.map((t) => ({ value: t, word: words.freezer.ways[t] }))}
            onChange={(value) => setWay(THAW_WAYS.find((t) => t === value) ?? 'refrigerator')}
          />
          <Field
            label={words.freezer.when}
            type="datetime-local"
            value={when ?? f.now}
            mistake={mistake?.field === 'when' ? mistake.sentence : null}
            onChange={setWhen}
          />
          <button type="submit" className="button">
            {words.freezer.write}
          </button>
        </form>
      )}
      {way !== 'refrigerator' && (
        <p className="freezer-caution" role="status">
          {way === 'counter' ? words.freezer.counterRule : words.freezer.coldRule}
        </p>
      )}
      <p className="freezer-said" role="status">
        {said}
      </p>
    </section>
  );
}

/** One pack of each kind, the oldest; packs that are cut stand for themselves. */
function choicesOf(f: Freezer): Pack[] {
  const there = f.stock.packs.filter((p) => p.gone === null && p.left > 0).sort(oldestFirst);
  const kinds = Map.groupBy(
    there,
    (p) => `${p.foodId} ${p.grams} ${p.frozenOn} ${p.bestBefore ?? ''} ${p.left < p.portions ? p.id : ''}`,
  );
  return [...kinds.values()].flatMap((packs) => packs[0] ?? []);
}

function packWord(f: Freezer, p: Pack): string {
  const what = words.freezer.perPack(f.nameOf(p.foodId), words.foodText(p.grams, f.house.massUnit));
  const frozen = words.shortDate(p.frozenOn, f.today);
  return `${what}; ${p.left < p.portions ? words.freezer.batchPart(p.left, p.portions, frozen) : words.freezer.batch(1, frozen)}`;
}
