import { dateOf } from '../../core/calendar/clock.ts';
import { dueWindows } from '../../core/dogs/gestation.ts';
import { useToday } from '../data/now.ts';
import { run, useQuery } from '../data/query.ts';
import { useLitter } from '../facts/useLitter.ts';
import { useHouse } from '../facts/useLitterGrowth.ts';
import { go, href } from '../links.ts';
import { words } from '../state/words.ts';
import { DamCurve } from './DamCurve.tsx';
import { DamDates, DamDue } from './DamDates.tsx';
import { DamFigures } from './DamFigures.tsx';
import { DamWeigh } from './DamWeigh.tsx';
import './dam.css';

/** One dam: when she is due, what she needs, her weight, her dates. */
export function DamPage({ damId }: { damId: string }) {
  const asked = useQuery('dogs.dams', {}).value;
  const dam = asked?.dams.find((d) => d.id === damId);
  const facts = useLitter(dam?.fields.litterId ?? null);
  const house = useHouse();
  const today = useToday();
  if (asked === null) return null;
  if (dam === undefined) return <p className="soft">{words.dam.gone}</p>;
  const { litterId } = dam.fields;
  const due = dueWindows(dam.fields)[0];
  const remove = async () => {
    const done = await run('dogs.damRemove', { damId });
    if (done.ok) go({ at: 'litters' });
  };
  return (
    <>
      <header className="title">
        <div>
          <h1>{words.dam.title(dam.fields.name)}</h1>
          <p>{facts === null ? words.dam.expecting : words.dam.ofLitter(words.litterName(facts.litter))}</p>
        </div>
        {litterId === null && (
          <a className="button main right" href={href({ at: 'begin' })}>
            {words.dam.whelped}
          </a>
        )}
        {facts !== null && (
          <a className="right" href={href({ at: 'litter', litterId: facts.litter.id, page: 'weaning', puppyId: null })}>
            {words.weaning.toWeaning}
          </a>
        )}
      </header>
      <div className="dam-two dam-page">
        <div>
          {litterId === null && (
            <section>
              <h2>{words.dam.due}</h2>
              <DamDue dam={dam} />
            </section>
          )}
          <section>
            <h2>{words.dam.food}</h2>
            {facts === null ? (
              <DamFigures dam={dam} day={today} nursed={null} unit={house.massUnit} />
            ) : (
              <p className="line soft">
                <a href={href({ at: 'litter', litterId: facts.litter.id, page: 'weaning', puppyId: null })}>
                  {words.weaning.toWeaning}
                </a>
              </p>
            )}
          </section>
        </div>
        <div>
          <DamWeigh dam={dam} unit={house.massUnit} />
          <DamCurve
            dam={dam}
            mark={
              facts !== null
                ? { day: dateOf(facts.litter.whelpedAt), word: words.dam.whelpedMark }
                : due === undefined
                  ? null
                  : { day: due.due, word: words.dam.dueMark }
            }
            unit={house.massUnit}
          />
        </div>
      </div>
      <section className="part">
        <h2>{words.dam.dates}</h2>
        <DamDates dam={dam} />
        <p>
          <button type="button" className="link" onClick={() => void remove()}>
            {words.dam.remove}
          </button>
        </p>
      </section>
    </>
  );
}
