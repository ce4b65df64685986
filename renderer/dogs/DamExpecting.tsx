import { useState } from 'react';
import { daysBetween } from '../../core/calendar/day.ts';
import { newDam } from '../../core/dogs/dam.ts';
import { dueWindows } from '../../core/dogs/gestation.ts';
import { useToday } from '../data/now.ts';
import { run, useQuery } from '../data/query.ts';
import { go, href } from '../links.ts';
import { FormField } from '../parts/form/fields.tsx';
import { words } from '../state/words.ts';
import './dam.css';

/** On Litters: bitches that are mated and have no litter yet, with the days they are due; and a place to write one down. */
export function DamExpecting() {
  const asked = useQuery('dogs.dams', {}).value;
  const today = useToday();
  const [open, setOpen] = useState(false);
  if (asked === null) return null;
  const expecting = asked.dams.filter((d) => d.fields.litterId === null);
  return (
    <section className="part dam-expecting">
      <h2>{words.dam.expecting}</h2>
      {expecting.map((dam) => {
        const due = dueWindows(dam.fields)[0];
        return (
          <p key={dam.id} className="line">
            <a href={href({ at: 'dam', damId: dam.id })}>{dam.fields.name}</a>
            <span className="soft">
              {due === undefined
                ? words.dam.dueNone
                : `${words.dam.dueWindow(due.low, due.high)}, ${words.dam.daysToGo(daysBetween(today, due.due))}`}
            </span>
          </p>
        );
      })}
      {expecting.length === 0 && <p className="note">{words.dam.expectingNone}</p>}
      {open ? (
        <NewDam />
      ) : (
        <button type="button" className="link" onClick={() => setOpen(true)}>
          {words.dam.add}
        </button>
      )}
    </section>
  );
}

function NewDam() {
  const [name, setName] = useState('');
  const [sentence, setSentence] = useState<string | null>(null);
  const begin = async () => {
    const typed = name.trim();
    if (typed === '') return setSentence(words.dam.nameNeeded);
    const done = await run('dogs.damBegin', newDam(typed, null));
    if (done.ok) go({ at: 'dam', damId: done.value.dam.id });
  };
  return (
    <form
      className="form"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        void begin();
      }}
    >
      <FormField
        label={words.dam.name}
        value={name}
        sentence={sentence}
        onChange={(text) => {
          setName(text);
          setSentence(null);
        }}
      />
      <p className="wide">
        <button type="submit" className="button">
          {words.dam.add}
        </button>
      </p>
    </form>
  );
}
