/** Fields on ruled paper. Saved when left or on Enter; Escape puts back what was saved, a second Escape goes to the margin. */
import { type HTMLInputTypeAttribute, type KeyboardEvent, type ReactNode, useId, useRef } from 'react';
import './form.css';
import type { Read } from './read.ts';
import { type Draft, type Save, useDraft } from './useDraft.ts';

interface Shown {
  /** The label in the left column; with `inCell` it is only spoken. */
  readonly label: string;
  readonly inCell?: boolean;
  readonly hint?: string;
  readonly className?: string;
}

function Labelled({ id, shown, sentence, children }: { id: string; shown: Shown; sentence: string | null; children: ReactNode }) {
  return (
    <>
      {shown.inCell === true ? null : <label htmlFor={id}>{shown.label}</label>}
      <span className="field-body">
        {children}
        {shown.hint === undefined ? null : (
          <span className="note" id={`${id}-hint`}>
            {shown.hint}
          </span>
        )}
      </span>
      <span className={sentence === null ? 'mistake-none' : 'mistake'} id={`${id}-mistake`} aria-live="polite">
        {sentence}
      </span>
    </>
  );
}

function described(id: string, shown: Shown, sentence: string | null): string | undefined {
  const ids = [shown.hint === undefined ? '' : `${id}-hint`, sentence === null ? '' : `${id}-mistake`].filter((t) => t !== '');
  return ids.length === 0 ? undefined : ids.join(' ');
}

function keys(draft: Draft, saved: string) {
  return (event: KeyboardEvent) => {
    if (event.key === 'Enter') {
      event.preventDefault();
      void draft.commit();
    } else if (event.key === 'Escape' && draft.text !== saved) {
      event.preventDefault();
      event.stopPropagation();
      draft.drop();
    }
  };
}

/** A line that is saved when left or on Enter. `onTry` hears every readable text while it is typed, null when it is not. */
export function SavedField<T>(
  props: Shown & {
    readonly value: string;
    readonly read: (text: string) => Read<T>;
    readonly save: Save<T>;
    readonly onTry?: (value: T | null) => void;
    readonly type?: HTMLInputTypeAttribute;
    readonly inputMode?: 'text' | 'decimal' | 'numeric' | 'tel' | 'email';
    readonly autoComplete?: string;
    readonly max?: string;
  },
) {
  const id = useId();
  const draft = useDraft(props.value, props.read, props.save);
  const { onTry } = props;
  return (
    <Labelled id={id} shown={props} sentence={draft.sentence}>
      <input
        id={id}
        className={`written ${props.className ?? ''}`}
        type={props.type ?? 'text'}
        inputMode={props.inputMode}
        autoComplete={props.autoComplete ?? 'off'}
        spellCheck={false}
        max={props.max}
        aria-label={props.inCell === true ? props.label : undefined}
        aria-invalid={draft.sentence !== null}
        aria-describedby={described(id, props, draft.sentence)}
        value={draft.text}
        onChange={(event) => {
          draft.type(event.target.value);
          if (onTry === undefined) return;
          const answer = props.read(event.target.value);
          onTry(answer.ok ? answer.value : null);
        }}
        onKeyDown={keys(draft, props.value)}
        onBlur={() => void draft.commit()}
      />
    </Labelled>
  );
}

export interface Option {
  readonly value: string;
  readonly word: string;
}

/**
 * A choice, saved at once when it is made with the pointer. By arrow keys every option is passed on the way, so then it
 * is saved on Enter or when the field is left.
 */
export function SavedChoice(
  props: Shown & { readonly value: string; readonly options: readonly Option[]; readonly save: Save<string> },
) {
  const id = useId();
  const draft = useDraft(props.value, (text) => ({ ok: true, value: text }), props.save);
  const byArrows = useRef(false);
  const onKey = keys(draft, props.value);
  return (
    <Labelled id={id} shown={props} sentence={draft.sentence}>
      <select
        id={id}
        className={`written ${props.className ?? ''}`}
        aria-label={props.inCell === true ? props.label : undefined}
        aria-invalid={draft.sentence !== null}
        aria-describedby={described(id, props, draft.sentence)}
        value={draft.text}
        onPointerDown={() => {
          byArrows.current = false;
        }}
        onKeyDown={(event) => {
          byArrows.current = true;
          onKey(event);
        }}
        onChange={(event) => {
          draft.type(event.target.value);
          if (!byArrows.current) void draft.commit(event.target.value);
        }}
        onBlur={() => void draft.commit()}
      >
        {props.options.map((o) => (
          <option key={o.value} value={o.value}>
            {o.word}
          </option>
        ))}
      </select>
    </Labelled>
  );
}

/** A field of a form that is sent as a whole: the page holds what is typed and what is wrong with it. */
export function FormField(
  props: Shown & {
    readonly value: string;
    readonly onChange: (text: string) => void;
    readonly sentence: string | null;
    readonly type?: HTMLInputTypeAttribute;
    readonly inputMode?: 'text' | 'decimal' | 'numeric';
    readonly max?: string;
    readonly required?: boolean;
    /** Offered while it is typed; anything else may be written too. */
    readonly suggestions?: readonly Option[];
  },
) {
  const id = useId();
  return (
    <Labelled id={id} shown={props} sentence={props.sentence}>
      <input
        id={id}
        className={`written ${props.className ?? ''}`}
        type={props.type ?? 'text'}
        inputMode={props.inputMode}
        autoComplete="off"
        spellCheck={false}
        max={props.max}
        list={props.suggestions === undefined ? undefined : `${id}-list`}
        aria-label={props.inCell === true ? props.label : undefined}
        aria-required={props.required}
        aria-invalid={props.sentence !== null}
        aria-describedby={described(id, props, props.sentence)}
        value={props.value}
        onChange={(event) => props.onChange(event.target.value)}
      />
      {props.suggestions !== undefined && (
        <datalist id={`${id}-list`}>
          {props.suggestions.map((o) => (
            <option key={o.value} value={o.value}>
              {o.word}
            </option>
          ))}
        </datalist>
      )}
    </Labelled>
  );
}

export function FormChoice(
  props: Shown & { readonly value: string; readonly options: readonly Option[]; readonly onChange: (value: string) => void },
) {
  const id = useId();
  return (
    <Labelled id={id} shown={props} sentence={null}>
      <select
        id={id}
        className={`written ${props.className ?? ''}`}
        value={props.value}
        aria-label={props.inCell === true ? props.label : undefined}
        aria-describedby={described(id, props, null)}
        onChange={(event) => props.onChange(event.target.value)}
      >
        {props.options.map((o) => (
          <option key={o.value} value={o.value}>
            {o.word}
          </option>
        ))}
      </select>
    </Labelled>
  );
}
