/** A field of a form that is written across the page: its label above it, what is wrong with it under it. */
import { type HTMLInputTypeAttribute, type RefObject, useId } from 'react';
import { SHIPPED_FOODS } from '../../core/food/catalogue.ts';
import type { Freezer } from '../facts/useFreezer.ts';
import type { Option } from '../parts/form/fields.tsx';
import { words } from '../state/words.ts';

interface FieldProps {
  readonly label: string;
  readonly value: string;
  readonly mistake: string | null;
  readonly onChange: (text: string) => void;
  readonly type?: HTMLInputTypeAttribute;
  readonly inputMode?: 'text' | 'decimal' | 'numeric';
  readonly size?: 'short' | 'usual';
  readonly hint?: string;
  readonly input?: RefObject<HTMLInputElement | null>;
}

export function Field(props: FieldProps) {
  const id = useId();
  const { mistake, hint } = props;
  const described = [hint === undefined ? '' : `${id}-hint`, mistake === null ? '' : `${id}-mistake`].filter((t) => t !== '');
  return (
    <div className={props.size === 'short' ? 'freezer-field short' : 'freezer-field'}>
      <label htmlFor={id} className="note">
        {props.label}
      </label>
      <input
        id={id}
        ref={props.input}
        className="written"
        type={props.type ?? 'text'}
        inputMode={props.inputMode}
        autoComplete="off"
        spellCheck={false}
        aria-invalid={mistake !== null}
        aria-describedby={described.length === 0 ? undefined : described.join(' ')}
        value={props.value}
        onChange={(event) => props.onChange(event.target.value)}
      />
      {hint !== undefined && (
        <span className="note" id={`${id}-hint`}>
          {hint}
        </span>
      )}
      <span className="freezer-mistake" id={`${id}-mistake`} aria-live="polite">
        {mistake}
      </span>
    </div>
  );
}

export function Choice(props: {
  readonly label: string;
  readonly value: string;
  readonly options: readonly Option[];
  readonly onChange: (value: string) => void;
}) {
  const id = useId();
  return (
    <div className="freezer-field wide">
      <label htmlFor={id} className="note">
        {props.label}
      </label>
      <select id={id} className="written" value={props.value} onChange={(event) => props.onChange(event.target.value)}>
        {props.options.map((o) => (
          <option key={o.value} value={o.value}>
            {o.word}
          </option>
        ))}
      </select>
    </div>
  );
}

/** Her own foods first, then those in the freezer or eaten, then the shipped ones. */
export function FoodChoice({ f, value, onChange }: { f: Freezer; value: string; onChange: (foodId: string) => void }) {
  const ids = new Set([
    ...f.catalogue.own.map((food) => food.id),
    ...f.plan.foods.map((food) => food.foodId),
    value,
    ...SHIPPED_FOODS.map((food) => food.id),
  ]);
  const options = [...ids].map((id) => ({ value: id, word: f.nameOf(id) }));
  return <Choice label={words.freezer.foodIs} value={value} options={options} onChange={onChange} />;
}
