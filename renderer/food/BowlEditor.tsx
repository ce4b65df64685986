/** The bowl of one meal: the usual food, a bowl of foods with their shares, or raw meaty bones. Every change is kept at once. */
import { useEffect, useRef } from 'react';
import type { Food } from '../../core/food/food.ts';
import type { Bowl, Place } from '../../core/food/rotation.ts';
import { FormChoice, type Option, SavedField } from '../parts/form/fields.tsx';
import { bad, good, type Read, readNumber } from '../parts/form/read.ts';
import { words } from '../state/words.ts';
import { boneBowl } from './bowls.ts';

type FoodsBowl = Extract<Bowl, { kind: 'foods' }>;
type BoneBowl = Extract<Bowl, { kind: 'bone' }>;

interface EditorProps {
  readonly place: Place;
  readonly bowl: Bowl | null;
  readonly usual: Food;
  readonly options: readonly Option[];
  /** Pieces that can be a meal of bones. */
  readonly bones: readonly Option[];
  readonly put: (bowl: Bowl | null) => Promise<boolean>;
  readonly onEveryDay: () => void;
  readonly onDone: () => void;
}

/** A food that is put to others begins with this part of the bowl. */
const FIRST_SHARE = 0.2;
const MOST_FOODS = 6;
const MOST_OTHERS = 0.99;

export function BowlEditor(props: EditorProps) {
  const { place, bowl, usual, bones, put, onDone } = props;
  const kind = bowl?.kind ?? 'usual';
  const escapes = useEscapeInside(onDone);
  const choose = (chosen: string) => {
    if (chosen === 'foods') void put({ kind: 'foods', parts: [{ foodId: usual.id, share: 1 }] });
    else if (chosen === 'bone') void put(boneBowl(bones[0]?.value ?? usual.id));
    else void put(null);
  };
  return (
    <section className="part bowl-editor" ref={escapes}>
      <h2>{words.week.cell(words.week.days[place.day] ?? '', words.meal.names[place.meal])}</h2>
      <div className="form" id="bowl-editor">
        <FormChoice
          label={words.week.kind}
          value={kind}
          options={[
            { value: 'usual', word: `${words.week.kinds.usual}: ${words.foods.nameOf(usual)}` },
            { value: 'foods', word: words.week.kinds.foods },
            { value: 'bone', word: words.week.kinds.bone },
          ]}
          onChange={choose}
        />
      </div>
      {bowl?.kind === 'foods' && <Foods {...props} bowl={bowl} />}
      {bowl?.kind === 'bone' && <Bones {...props} bowl={bowl} />}
      <p className="bowl-actions">
        <button type="button" className="link" onClick={props.onEveryDay}>
          {words.week.everyDay(words.meal.names[place.meal])}
        </button>
        {bowl !== null && (
          <button type="button" className="link" onClick={() => void put(null)}>
            {words.week.empty}
          </button>
        )}
        <button type="button" className="link" onClick={onDone}>
          {words.week.done}
        </button>
      </p>
    </section>
  );
}

/** Escape inside the element, unless a field used it to put back what was saved. */
function useEscapeInside(leave: () => void): React.RefObject<HTMLElement | null> {
  const element = useRef<HTMLElement>(null);
  useEffect(() => {
    // On the document: after the fields, which React hears at its root, and before the shell, which listens on the window.
    const listener = (event: KeyboardEvent) => {
      if (event.key !== 'Escape' || event.defaultPrevented || element.current?.contains(event.target as Node) !== true) return;
      event.preventDefault();
      leave();
    };
    document.addEventListener('keydown', listener);
    return () => document.removeEventListener('keydown', listener);
  });
  return element;
}

/** The first food takes what the others leave. */
function withShares(parts: FoodsBowl['parts']): FoodsBowl {
  const [first, ...others] = parts;
  if (first === undefined) throw new RangeError('an empty bowl');
  const left = 1 - others.reduce((sum, p) => sum + p.share, 0);
  return { kind: 'foods', parts: [{ ...first, share: Math.round(left * 10_000) / 10_000 }, ...others] };
}

function Foods({ bowl, options, put }: EditorProps & { bowl: FoodsBowl }) {
  const { parts } = bowl;
  const free = (foodId: string) => options.filter((o) => o.value === foodId || parts.every((p) => p.foodId !== o.value));
  const change = (at: number, to: Partial<FoodsBowl['parts'][number]>) =>
    put(withShares(parts.map((p, i) => (i === at ? { ...p, ...to } : p))));
  const readShare =
    (at: number) =>
    (text: string): Read<number> => {
      const read = readNumber({ low: 1, high: 99, unit: '%', example: '20' })(text);
      if (!read.ok) return read;
      const others = parts.reduce((sum, p, i) => sum + (i === 0 || i === at ? 0 : p.share), read.value / 100);
      return others > MOST_OTHERS ? bad(words.week.sharesNot(String(Math.round(others * 100)))) : good(read.value / 100);
    };
  const next = free('')[0];
  const room = (parts[0]?.share ?? 0) > FIRST_SHARE && parts.length < MOST_FOODS && next !== undefined;
  return (
    <>
      <ol className="bowl-parts">
        {parts.map((part, i) => (
          // A place in the bowl: another food chosen for it leaves what is being typed where it is.
          <li key={words.week.food(i + 1)}>
            <FormChoice
              inCell
              label={words.week.food(i + 1)}
              value={part.foodId}
              options={free(part.foodId)}
              onChange={(foodId) => void change(i, { foodId })}
            />
            {i === 0 ? (
              <span className="bowl-rest">{words.percentText(part.share, 1)}</span>
            ) : (
              <SavedField
                inCell
                label={words.week.share(i + 1)}
                hint={words.week.percent}
                inputMode="decimal"
                value={String(Math.round(part.share * 1000) / 10)}
                read={readShare(i)}
                save={async (share) => ((await change(i, { share })) ? null : words.form.notSaved)}
              />
            )}
            {parts.length > 1 && (
              <button
                type="button"
                className="link note"
                aria-label={words.week.takeOut(i + 1)}
                onClick={() => void put(withShares(parts.filter((_, at) => at !== i)))}
              >
                {words.week.takeOutShort}
              </button>
            )}
          </li>
        ))}
      </ol>
      <p className="note">
        {room && (
          <button
            type="button"
            className="link"
            onClick={() => void put(withShares([...parts, { foodId: next.value, share: FIRST_SHARE }]))}
          >
            {words.week.add}
          </button>
        )}{' '}
        {parts.length > 1 && words.week.restToFirst}
      </p>
    </>
  );
}

function Bones({ bowl, bones, put }: EditorProps & { bowl: BoneBowl }) {
  const count = readNumber({ low: 1, high: 12, integer: true, example: '2' });
  const grams = readNumber({ low: 1, high: 2000, unit: 'g', example: '90' });
  const save = (to: Partial<BoneBowl>) => put({ ...bowl, ...to }).then((ok) => (ok ? null : words.form.notSaved));
  const known = bones.some((b) => b.value === bowl.foodId);
  return (
    <>
      <div className="form">
        <FormChoice
          label={words.week.boneFood}
          value={known ? bowl.foodId : ''}
          options={known ? bones : [{ value: '', word: words.week.chooseAnother }, ...bones]}
          onChange={(foodId) => void put({ ...bowl, foodId })}
        />
        <SavedField
          label={words.week.pieces}
          inputMode="numeric"
          value={String(bowl.pieces)}
          read={count}
          save={(pieces) => save({ pieces })}
        />
        <SavedField
          label={words.week.pieceGrams}
          hint={words.week.pieceHint}
          inputMode="decimal"
          value={String(bowl.pieceGrams)}
          read={grams}
          save={(pieceGrams) => save({ pieceGrams })}
        />
      </div>
      <p className="note">{words.week.boneCaution}</p>
    </>
  );
}
