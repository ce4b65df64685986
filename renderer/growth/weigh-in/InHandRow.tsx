import { type RefObject, useEffect, useId, useRef } from 'react';
import { puppyName } from '../../../core/litter/litter.ts';
import type { MassUnit } from '../../../core/units/mass.ts';
import type { WeighInTime } from '../../facts/weigh-in.ts';
import { CollarBand } from '../../parts/CollarBand.tsx';
import { collarWords } from '../../parts/collar-words.ts';
import { words } from '../../state/words.ts';
import { ScaleAsks, ScalePhase } from '../scale/ScaleRemark.tsx';
import { ScaleTrace } from '../scale/ScaleTrace.tsx';
import { useLiveGrams } from '../scale/useLiveGrams.ts';
import type { ScaleWeighing } from '../scale/useScaleWeighing.ts';
import { weighKeys } from './keys.ts';
import type { WeighInRow } from './rows.ts';
import type { WeighIn } from './useWeighIn.ts';
import './weigh-in.css';

/** Which weigh-in this is, and the way to another. */
export interface Turn {
  readonly time: WeighInTime;
  readonly choose: (time: WeighInTime) => void;
}

interface InHandProps {
  turn: Turn;
  row: WeighInRow;
  weighIn: WeighIn;
  scale: ScaleWeighing;
  unit: MassUnit;
}

/** The row of the puppy in the hand: its field, and what is asked about it. */
export function InHand({ row, weighIn, scale, unit, turn }: InHandProps) {
  const { puppy, before } = row;
  const field = useRef<HTMLInputElement>(null);
  const line = useRef<HTMLTableRowElement>(null);
  const remarkId = useId();
  const live = useLiveGrams();
  useEffect(() => {
    field.current?.focus({ preventScroll: true });
    field.current?.select();
  }, []);
  useInSight(line);
  // What cannot be read stays, and is selected: typing over it is enough.
  useEffect(() => {
    if (weighIn.mistake !== null) field.current?.select();
  }, [weighIn.mistake]);
  // So is a number that was asked about.
  useEffect(() => {
    if (weighIn.questioned) field.current?.select();
  }, [weighIn.questioned]);
  const name = puppyName(puppy);
  return (
    <tr className="in-hand" ref={line}>
      <td>
        <CollarBand collar={puppy.collar} height={38} label={null} />
      </td>
      <th scope="row">
        <bdi className="called">{name}</bdi>
        <span className="note">
          {collarWords(puppy.collar)}, {words.growth.dogOrBitch[puppy.sex]}
        </span>
      </th>
      <td className="figure soft">{before === null ? '' : words.massFigure(before.grams, unit)}</td>
      <td className="figure">
        <input
          ref={field}
          className={weighIn.mistake === null ? 'weight-field' : 'weight-field mistaken'}
          value={weighIn.text}
          placeholder={live === null || !scale.listens ? '' : words.massFigure(live, unit)}
          aria-label={words.growth.weightOf(name)}
          aria-describedby={remarkId}
          aria-invalid={weighIn.mistake !== null}
          inputMode="decimal"
          enterKeyHint="next"
          autoComplete="off"
          spellCheck={false}
          maxLength={40}
          onChange={(event) => weighIn.type(event.target.value)}
          onKeyDown={(event) => weighKeys(event, weighIn, scale, row, turn)}
        />
      </td>
      <td className="figure gain-now">{row.doubt === null ? '' : '?'}</td>
      <td className="remark" id={remarkId} aria-live="polite">
        {scale.listens && weighIn.field === 'empty' && <ScaleTrace />}
        <InHandRemark row={row} weighIn={weighIn} scale={scale} unit={unit} turn={turn} />
      </td>
    </tr>
  );
}

/** In the middle of its list, also when the drift line under it grows or the window is turned. */
function useInSight(line: RefObject<HTMLTableRowElement | null>): void {
  useEffect(() => {
    const row = line.current;
    const list = row?.closest('.weigh-in-list');
    if (row == null || list == null) return;
    row.scrollIntoView({ block: 'center' });
    let first = true;
    const watch = new ResizeObserver(() => {
      if (!first) row.scrollIntoView({ block: 'center' });
      first = false;
    });
    watch.observe(list);
    return () => watch.disconnect();
  }, [line]);
}

function InHandRemark({ row, weighIn, scale, unit, turn }: InHandProps) {
  const { doubt } = row;
  if (weighIn.mistake !== null) {
    return (
      <>
        <span className="fact">{words.massMistake(weighIn.mistake, weighIn.text)}</span> {words.mass.howToWrite[unit]}
        <span className="note below">{words.mass.stays}</span>
      </>
    );
  }
  if (doubt !== null && row.grams !== null && !weighIn.fromScale) {
    return (
      <>
        <span className="fact">{words.growthFinding.oddity(doubt.fact, unit)}</span> {words.growthFinding.question(doubt)}
        <span className="answers">
          {weighIn.littermate !== null && (
            <button type="button" tabIndex={-1} onClick={weighIn.giveAway}>
              <kbd>{weighIn.littermate.collar.letter}</kbd>{' '}
              <b>{words.growth.isOf(puppyName(weighIn.littermate), words.massText(row.grams, unit))}</b>
            </button>
          )}
          {doubt.guessGrams !== null && (
            <button type="button" tabIndex={-1} onClick={weighIn.takeGuess}>
              <kbd>{words.keys.space}</kbd> <b>{words.massText(doubt.guessGrams, unit)}</b>
            </button>
          )}
          <button type="button" tabIndex={-1} onClick={() => weighIn.enter()}>
            <kbd>{words.keys.enter}</kbd> {words.growth.keep(words.massText(row.grams, unit))}
          </button>
        </span>
      </>
    );
  }
  if (weighIn.swap !== null) {
    return (
      <>
        <span className="fact">{words.growthFinding.reading(weighIn.swap, unit)}</span>
        <span className="answers">
          <button type="button" tabIndex={-1} onClick={weighIn.exchange}>
            <kbd>X</kbd> {words.answer.exchange}
          </button>
          <button type="button" tabIndex={-1} onClick={() => weighIn.enter()}>
            <kbd>{words.keys.enter}</kbd> {words.answer.areRight}
          </button>
        </span>
      </>
    );
  }
  if (row.unwritten !== null && row.unwritten.state !== 'sending') {
    return (
      <b className="not-written">{row.unwritten.state === 'refused' ? words.growth.refusedWeight : words.growth.notWritten}</b>
    );
  }
  const next = weighIn.rows.find((r) => r.puppy.id === weighIn.nextId);
  const asked = scale.other !== null || scale.offer !== null;
  if (asked) return <ScaleAsks scale={scale} puppy={row.puppy} puppies={weighIn.rows.map((r) => r.puppy)} unit={unit} />;
  return (
    <>
      <span className="soft">
        {weighIn.expected === null
          ? row.before === null
            ? words.growth.firstWeight
            : ''
          : words.growth.expected(words.massText(weighIn.expected, unit))}
        {row.after !== null &&
          ` ${words.growth.later(words.massText(row.after.grams, unit), words.when(row.after.at, turn.time.day))}`}
      </span>
      <span className="note below">
        {scale.listens && weighIn.field === 'empty' && <ScalePhase />}
        {weighIn.fromScale && words.scale.filled} <kbd>{words.keys.enter}</kbd>{' '}
        {next === undefined ? words.growth.lastOne : words.growth.next(puppyName(next.puppy))}
      </span>
    </>
  );
}
