import { birthNote } from '../../core/growth/birth-note.ts';
import type { GrowthInput } from '../../core/growth/input.ts';
import { birthIn, milestonesOf } from '../../core/growth/milestones.ts';
import { seriesOf } from '../../core/growth/series.ts';
import type { Litter } from '../../core/litter/litter.ts';
import { type MassUnit, massText } from '../../core/units/mass.ts';
import { birthHow, birthWords, milestoneWords, puppyNoteWords as w } from '../../core/words/en/puppy-notes.ts';
import { Why } from '../parts/Why.tsx';

/** Lines of a puppy's facts: what its birth weight means, and when it doubled and tripled it. */
export function BirthFacts({
  litter,
  input,
  puppyId,
  unit,
}: {
  litter: Litter;
  input: GrowthInput;
  puppyId: string;
  unit: MassUnit;
}) {
  const series = seriesOf(input, puppyId);
  const birth = birthIn(series);
  if (birth === null) return null;
  const births = input.puppies.flatMap((p) => birthIn(seriesOf(input, p.id)) ?? []);
  const note = birthNote(litter.breed, litter.breedBirthGrams, birth, births);
  const milestones = milestonesOf(series);
  return (
    <>
      <dt>{w.birthWeight}</dt>
      <dd>
        {massText(birth, unit)}
        {note !== null && (
          <Why explanation={{ figure: `${massText(birth, unit)}, ${birthWords(note)}.`, how: birthHow(note, unit), sum: [] }}>
            {birthWords(note)}
          </Why>
        )}
        {note !== null && note.is !== 'normal' && <span className="note">{w.closely}</span>}
      </dd>
      <dt>{w.milestones}</dt>
      <dd>
        <Why
          explanation={{ figure: milestones.length === 0 ? w.notYet : milestoneWords(milestones), how: w.milestonesHow, sum: [] }}
        >
          {milestones.length === 0 ? w.notYet : milestoneWords(milestones)}
        </Why>
      </dd>
    </>
  );
}
