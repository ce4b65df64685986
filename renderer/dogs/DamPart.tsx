import { DAY_MS } from '../../core/calendar/durations.ts';
import { type Dam, newDam } from '../../core/dogs/dam.ts';
import { litterOfDam } from '../../core/feeding/dam-day.ts';
import { isCurrent } from '../../core/litter/litter.ts';
import { run, useQuery } from '../data/query.ts';
import type { Weaning } from '../facts/useWeaning.ts';
import { href } from '../links.ts';
import { words } from '../state/words.ts';
import { DamCurve } from './DamCurve.tsx';
import { changeDam } from './DamDates.tsx';
import { DamFigures } from './DamFigures.tsx';
import { DamWeigh } from './DamWeigh.tsx';
import './dam.css';

/** The dam of a litter: her food today, her weight, how the litter's birth weight sits beside hers. */
export function DamPart({ weaning, solids }: { weaning: Weaning; solids: number }) {
  const { litter } = weaning;
  const asked = useQuery('dogs.dams', {}).value;
  if (asked === null) return null;
  const dam = asked.dams.find((d) => d.fields.litterId === litter.id);
  return (
    <section className="part dam-part">
      <h2>{litter.dam === '' ? words.dam.heading : words.dam.title(litter.dam)}</h2>
      {dam === undefined ? <NoDam weaning={weaning} dams={asked.dams} /> : <Known dam={dam} weaning={weaning} solids={solids} />}
    </section>
  );
}

function NoDam({ weaning: { litter }, dams }: { weaning: Weaning; dams: readonly Dam[] }) {
  const same = dams.find(
    (d) => d.fields.litterId === null && d.fields.name.trim().toLowerCase() === litter.dam.trim().toLowerCase(),
  );
  const blank = newDam(litter.dam, litter.id);
  return (
    <p className="line">
      <span className="soft">{words.dam.none}</span>
      {same !== undefined && (
        <button type="button" className="link" onClick={() => void changeDam(same, { litterId: litter.id })}>
          {words.dam.join(same.fields.name)}
        </button>
      )}
      <button type="button" className="link" onClick={() => void run('dogs.damBegin', blank)}>
        {words.dam.write(litter.dam)}
      </button>
    </p>
  );
}

function Known({ dam, weaning, solids }: { dam: Dam; weaning: Weaning; solids: number }) {
  const { born, today, facts, reckoned } = weaning;
  const unit = facts.house.massUnit;
  return (
    <div className="dam-two">
      <div>
        <DamFigures dam={dam} day={today} nursed={{ ...reckoned, solids }} unit={unit} />
        <BirthShare dam={dam} weaning={weaning} />
      </div>
      <div>
        <DamWeigh dam={dam} unit={unit} />
        <DamCurve dam={dam} mark={{ day: born, word: words.dam.whelpedMark }} unit={unit} />
        <p>
          <a href={href({ at: 'dam', damId: dam.id })}>{words.dam.more}</a>
        </p>
      </div>
    </div>
  );
}

/** Beside her weight before whelping, else after it: the last one until a week after. */
function BirthShare({ dam, weaning: { facts, litter } }: { dam: Dam; weaning: Weaning }) {
  const births = new Map(facts.readings.filter((r) => r.session === 'birth' && isCurrent(r)).map((r) => [r.puppyId, r.grams]));
  if (facts.puppies.length === 0 || births.size < facts.puppies.length) return null;
  const week = 7 * DAY_MS;
  const her = dam.weights.findLast((x) => x.instant <= litter.whelpedInstant + week);
  if (her === undefined) return null;
  const all = [...births.values()].reduce((sum, g) => sum + g, 0);
  const { part, is } = litterOfDam(all, her.grams);
  return <p className="note">{words.dam.birthShare(`${(part * 100).toFixed(1)}\u00a0%`, is)}</p>;
}
