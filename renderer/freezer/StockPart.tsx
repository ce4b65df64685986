import { useId, useState } from 'react';
import { dateOf } from '../../core/calendar/clock.ts';
import { gramsLeft, isOverdue, oldestFirst, type Pack, WAYS_OUT, type WayOut } from '../../core/freezer/pack.ts';
import { foodUnit } from '../../core/units/food.ts';
import { now } from '../data/now.ts';
import { run } from '../data/query.ts';
import type { Freezer } from '../facts/useFreezer.ts';
import { readNumber } from '../parts/form/read.ts';
import { TableHead } from '../parts/TableHead.tsx';
import { words } from '../state/words.ts';

/** Packs of one food and one size. */
interface Group {
  readonly key: string;
  readonly foodId: string;
  readonly what: string;
  readonly packs: readonly Pack[];
}

function groupsOf(f: Freezer): Group[] {
  const there = f.stock.packs.filter((p) => p.gone === null && p.left > 0).sort(oldestFirst);
  const groups = Map.groupBy(there, (p) => `${p.foodId} ${p.grams} ${p.portions}`);
  return [...groups]
    .map(([key, packs]) => {
      const first = packs[0] as Pack;
      const each = words.foodText(first.grams, f.house.massUnit);
      return { key, foodId: first.foodId, what: words.freezer.perPack(f.nameOf(first.foodId), each), packs };
    })
    .sort((a, b) => (a.what < b.what ? -1 : 1));
}

/** What there is and until when it lasts. A row opens to its packs; the whole can be counted. */
export function StockPart({ f }: { f: Freezer }) {
  const [counting, setCounting] = useState<Record<string, string> | null>(null);
  const [said, setSaid] = useState('');
  const groups = groupsOf(f);
  const unit = f.house.massUnit;
  return (
    <section>
      <h2>{words.freezer.inFreezer}</h2>
      <p className="unseen" role="status">
        {said}
      </p>
      {groups.length === 0 ? (
        <p className="line soft">{words.freezer.empty}</p>
      ) : (
        <table className="stock">
          <TableHead
            heads={[
              words.freezer.food,
              { head: words.freezer.packsHead, className: 'figure' },
              { head: words.freezer.gramsHead(foodUnit(unit)), className: 'figure' },
              { head: words.freezer.lastsHead, className: 'stock-lasts' },
            ]}
          />
          <tbody>
            {groups.map((group) => (
              <GroupRows
                key={group.key}
                f={f}
                group={group}
                count={counting?.[group.key] ?? null}
                onCount={(text) => setCounting((c) => ({ ...c, [group.key]: text }))}
                counting={counting !== null}
                announce={setSaid}
              />
            ))}
          </tbody>
        </table>
      )}
      {groups.length > 0 && <Counting groups={groups} counting={counting} set={setCounting} announce={setSaid} />}
    </section>
  );
}

const readCount = () => readNumber({ low: 0, high: 500, integer: true, example: words.freezer.examples.count });

function Counting(props: {
  groups: readonly Group[];
  counting: Record<string, string> | null;
  set: (counting: Record<string, string> | null) => void;
  announce: (text: string) => void;
}) {
  const { groups, counting, set, announce } = props;
  const [mistake, setMistake] = useState('');
  if (counting === null) {
    return (
      <p className="stock-count">
        <button type="button" className="link" onClick={() => set({})}>
          {words.freezer.countIt}
        </button>
      </p>
    );
  }
  const save = async () => {
    const counts = [];
    for (const group of groups) {
      const text = counting[group.key];
      if (text === undefined) continue;
      const read = readCount()(text);
      if (!read.ok) return setMistake(`${group.what}: ${read.sentence}`);
      if (read.value !== group.packs.length) counts.push({ packIds: group.packs.map((p) => p.id), there: read.value });
    }
    setMistake('');
    if (counts.length > 0 && !(await run('freezer.count', { on: dateOf(now().local), counts })).ok) return;
    announce(words.freezer.counted);
    set(null);
  };
  return (
    <div className="stock-count">
      <p className="note">{words.freezer.counting}</p>
      <p className="freezer-mistake" role="alert">
        {mistake}
      </p>
      <p className="freezer-do">
        <button type="button" className="button" onClick={() => void save()}>
          {words.freezer.saveCount}
        </button>
        <button type="button" className="link" onClick={() => set(null)}>
          {words.freezer.stopCount}
        </button>
      </p>
    </div>
  );
}

interface GroupProps {
  readonly f: Freezer;
  readonly group: Group;
  readonly counting: boolean;
  readonly count: string | null;
  readonly onCount: (text: string) => void;
  readonly announce: (text: string) => void;
}

function GroupRows({ f, group, counting, count, onCount, announce }: GroupProps) {
  const [open, setOpen] = useState(false);
  const id = useId();
  const grams = group.packs.reduce((sum, p) => sum + gramsLeft(p), 0);
  const portions = group.packs[0]?.portions ?? 1;
  return (
    <>
      <tr>
        <th scope="row" className="stock-food">
          {group.what}
          {portions > 1 && <span className="note"> {words.freezer.cutIn(portions)}</span>}{' '}
          <button
            type="button"
            className="link note"
            aria-expanded={open}
            aria-controls={id}
            aria-label={words.freezer.openPack(group.what)}
            onClick={() => setOpen(!open)}
          >
            {words.freezer.more}
          </button>
        </th>
        <td className="figure">
          {counting ? (
            <input
              className="written stock-there"
              inputMode="numeric"
              aria-label={words.freezer.there(group.what)}
              value={count ?? String(group.packs.length)}
              onChange={(event) => onCount(event.target.value)}
            />
          ) : (
            group.packs.length
          )}
        </td>
        <td className="figure">{words.foodFigure(grams, f.house.massUnit)}</td>
        <td className="stock-lasts">
          <LastsTo f={f} foodId={group.foodId} />
        </td>
      </tr>
      {open && (
        <tr id={id} className="stock-batches">
          <td colSpan={4}>
            <Batches f={f} group={group} announce={announce} />
          </td>
        </tr>
      )}
    </>
  );
}

function LastsTo({ f, foodId }: { f: Freezer; foodId: string }) {
  const food = f.plan.foods.find((o) => o.foodId === foodId);
  if (food === undefined || !food.wanted) return <span className="soft">{words.freezer.unused}</span>;
  if (food.lastsTo === null) return words.freezer.beyond(f.untilDay, f.today);
  const soonest = f.plan.foods.every((o) => o.lastsTo === null || food.lastsTo === null || o.lastsTo >= food.lastsTo);
  const day = words.dayOfWeek(dateOf(food.lastsTo));
  return soonest ? <b>{day}</b> : day;
}

/** Packs that are alike in everything she can see. */
function batchesOf(packs: readonly Pack[]): Pack[][] {
  const alike = Map.groupBy(packs, (p) => `${p.frozenOn} ${p.bestBefore ?? ''} ${p.place} ${p.left < p.portions ? p.id : ''}`);
  return [...alike.values()];
}

function Batches({ f, group, announce }: Pick<GroupProps, 'f' | 'group' | 'announce'>) {
  return batchesOf(group.packs).map((packs) => <Batch key={packs[0]?.id} f={f} packs={packs} announce={announce} />);
}

/** Some of them leave the freezer without being thawed by the plan. */
function Batch({ f, packs, announce }: { f: Freezer; packs: readonly Pack[]; announce: (text: string) => void }) {
  const [howMany, setHowMany] = useState('1');
  const [mistake, setMistake] = useState('');
  const first = packs[0] as Pack;
  const id = useId();
  const takeOut = async (way: WayOut) => {
    const read = readNumber({ low: 1, high: packs.length, integer: true, example: '1' })(howMany);
    if (!read.ok) return setMistake(read.sentence);
    const packIds = packs.slice(0, read.value).map((p) => p.id);
    const done = await run('freezer.takeOut', { packIds, way, on: dateOf(now().local) });
    if (!done.ok) return;
    setMistake('');
    announce(words.freezer.gone(packIds.length, f.nameOf(first.foodId), way));
  };
  const frozen = words.shortDate(first.frozenOn, f.today);
  const facts = [
    first.left < first.portions
      ? words.freezer.batchPart(first.left, first.portions, frozen)
      : words.freezer.batch(packs.length, frozen),
    first.bestBefore === null ? '' : words.freezer.bestBeforeIs(words.shortDate(first.bestBefore, f.today)),
    first.place,
  ];
  return (
    <div className="stock-batch">
      <span>
        {facts.filter((t) => t !== '').join(', ')}
        {isOverdue(first, f.today) && <b> {words.freezer.overdueWord}</b>}
      </span>
      <span className="stock-out">
        <label htmlFor={id} className="note">
          {words.freezer.howMany}
        </label>
        <input
          id={id}
          className="written stock-there"
          inputMode="numeric"
          value={howMany}
          aria-invalid={mistake !== ''}
          onChange={(event) => setHowMany(event.target.value)}
        />
        {WAYS_OUT.map((way) => (
          <button key={way} type="button" className="link note" onClick={() => void takeOut(way)}>
            {words.freezer.wayOut(way)}
          </button>
        ))}
      </span>
      <span className="freezer-mistake" role="alert">
        {mistake}
      </span>
    </div>
  );
}
