import { useId, useState } from 'react';
import type { CivilDate } from '../../core/calendar/day.ts';
import { type Chip, type ReadChip, readChip } from '../../core/care/microchip.ts';
import type { ContractError } from '../../core/contract/result.ts';
import { type Puppy, puppyName } from '../../core/litter/litter.ts';
import { shortText } from '../../core/units/fields.ts';
import { longestOf } from '../../core/units/limits.ts';
import { run } from '../data/query.ts';
import { SavedField } from '../parts/form/fields.tsx';
import { good, type Read, readDate, readText } from '../parts/form/read.ts';
import { useWindow } from '../state/window.ts';
import { words } from '../state/words.ts';
import { PuppyHead } from './PuppyHead.tsx';

const LINE = longestOf(shortText);

interface RowProps {
  readonly puppy: Puppy;
  readonly chip: Chip | null;
  /** What stands above the table, for a number that is written now. */
  readonly next: { readonly day: CivilDate | null; readonly by: string };
  /** To the next puppy without a number. */
  readonly goOn: () => void;
  readonly announce: (text: string) => void;
}

/** One puppy's chip: two fields until its number is written, then the number in groups with what may be mended. */
export function ChipRow(props: RowProps) {
  const { puppy, chip } = props;
  return (
    <tr>
      <PuppyHead puppy={puppy} />
      {chip === null ? <Unwritten {...props} /> : <Written {...props} chip={chip} />}
    </tr>
  );
}

/** A reader ends what it says with Enter, so both fields fill themselves when the chip is scanned twice. */
function Unwritten({ puppy, next, goOn, announce }: RowProps) {
  const id = useId();
  const name = puppyName(puppy);
  const [number, setNumber] = useState('');
  const [again, setAgain] = useState('');
  const [sentence, setSentence] = useState<string | null>(null);
  const read = readChip(number);
  const type = (to: (text: string) => void) => (event: React.ChangeEvent<HTMLInputElement>) => {
    to(event.target.value.slice(0, LINE));
    setSentence(null);
  };
  const enterNumber = () => {
    if (!read.ok) return setSentence(words.chipFault(read.fault));
    document.getElementById(`${id}-again`)?.focus();
  };
  const enterAgain = async () => {
    if (!read.ok) return setSentence(words.chipFault(read.fault));
    const second = readChip(again);
    if (!second.ok || second.code !== read.code) {
      setAgain('');
      return setSentence(second.ok ? words.care.different : words.chipFault(second.fault));
    }
    // What is scanned next must not fall into this row while it is being written.
    goOn();
    const done = await run('care.setChip', { puppyId: puppy.id, change: { code: read.code, ...next } }, { quiet: true });
    if (done.ok) return announce(words.care.written(name, words.chipText(read.code)));
    const refused = refusal(done.error);
    if (refused === null) return useWindow.getState().setFailure(done.error);
    setAgain('');
    setSentence(refused);
    announce(words.care.notWritten(name, refused));
  };
  const keys = (enter: () => void) => (event: React.KeyboardEvent) => {
    if (event.key === 'Enter') {
      event.preventDefault();
      enter();
    } else if (event.key === 'Escape' && (number !== '' || again !== '')) {
      event.preventDefault();
      event.stopPropagation();
      setNumber('');
      setAgain('');
      setSentence(null);
      document.getElementById(`chip-${puppy.id}`)?.focus();
    }
  };
  const shared = { className: 'written', inputMode: 'numeric', autoComplete: 'off', spellCheck: false } as const;
  return (
    <>
      <td data-label={words.care.number}>
        <input
          {...shared}
          id={`chip-${puppy.id}`}
          aria-label={words.care.numberOf(name)}
          aria-invalid={sentence !== null}
          aria-describedby={`${id}-said`}
          value={number}
          onChange={type(setNumber)}
          onKeyDown={keys(enterNumber)}
        />
        <span id={`${id}-said`} className={sentence === null ? 'note' : 'mistake'} aria-live="polite">
          {sentence ?? <Meaning read={number === '' ? null : read} />}
        </span>
      </td>
      <td data-label={words.care.again}>
        <input
          {...shared}
          id={`${id}-again`}
          aria-label={words.care.againOf(name)}
          aria-describedby={`${id}-said`}
          value={again}
          onChange={type(setAgain)}
          onKeyDown={keys(() => void enterAgain())}
        />
      </td>
      <td />
      <td />
    </>
  );
}

/** What she can mend in the row itself. */
function refusal(error: ContractError): string | null {
  if (error.code === 'conflict') return words.care.twice;
  if (error.code === 'refused') return words.care.test;
  return error.field === 'change.day' ? words.care.before : null;
}

/** What a whole number says, beside its figures in groups; nothing while it is still being typed. */
function Meaning({ read }: { read: ReadChip | null }) {
  if (read === null || !read.ok) return null;
  return (
    <>
      <span className="care-code">{words.chipText(read.code)}</span> {words.chipIssuer(read.issuer)}
    </>
  );
}

function Written({ puppy, chip, announce }: RowProps & { chip: Chip }) {
  const name = puppyName(puppy);
  const read = readChip(chip.code);
  const change = async (to: { readonly day?: CivilDate | null; readonly by?: string }): Promise<string | null> => {
    const done = await run('care.setChip', { puppyId: puppy.id, change: to }, { quiet: true });
    if (done.ok) return null;
    return done.error.field === 'change.day' ? dayFault(puppy, to) : words.form.notSaved;
  };
  const takeAway = async () => {
    const done = await run('care.removeChip', { puppyId: puppy.id });
    if (done.ok) announce(words.care.takenAway(name));
  };
  return (
    <>
      <td data-label={words.care.number} colSpan={2}>
        <span className="care-code">{words.chipText(chip.code)}</span>
        <span className="note">
          {read.ok && words.chipIssuer(read.issuer)}{' '}
          <button type="button" className="link" aria-label={words.care.takeAwayOf(name)} onClick={() => void takeAway()}>
            {words.care.takeAway}
          </button>
        </span>
      </td>
      <td data-label={words.care.putIn}>
        <SavedField
          inCell
          type="date"
          label={words.care.putInOf(name)}
          value={chip.day ?? ''}
          read={readDayOrNone}
          save={(day) => change({ day })}
        />
      </td>
      <td data-label={words.care.by}>
        <SavedField inCell label={words.care.byOf(name)} value={chip.by} read={readText(LINE)} save={(by) => change({ by })} />
      </td>
    </>
  );
}

function dayFault(puppy: Puppy, to: { readonly day?: CivilDate | null }): string {
  return to.day !== undefined && to.day !== null && to.day < puppy.bornAt.slice(0, 10) ? words.care.before : words.care.toCome;
}

function readDayOrNone(text: string): Read<CivilDate | null> {
  return text === '' ? good(null) : readDate(text);
}
