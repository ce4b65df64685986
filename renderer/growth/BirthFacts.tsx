import { birthNote } from '../../core/growth/birth-note.ts';
import type { GrowthInput } from '../../core/growth/input.ts';
import { birthIn, milestonesOf } from '../../core/growth/milestones.ts';
import { seriesOf } from '../../core/growth/series.ts';
import type { Litter } from '../../core/litter/litter.ts';
import type { MassUnit } from '../../core/units/mass.ts';
import { Why } from '../parts/Why.tsx';
import { words } from '../state/words.ts';

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
  const puppy = input.puppies.find((p) => p.id === puppyId);
  const birth = birthIn(series);
  if (birth === null) return null;
  const births = input.puppies.flatMap((p) => birthIn(seriesOf(input, p.id)) ?? []);
  const note = birthNote(litter.breed, litter.breedBirthGrams, birth, births);
  const milestones = milestonesOf(series);
  return (
    <>
      <dt>{words.puppyNote.birthWeight}</dt>
      <dd>
        {words.massText(birth, unit)}
        {note !== null && (
          <Why
            explanation={{
              figure: `${words.massText(birth, unit)}, ${words.birth(note)}.`,
              how: words.birthHow(note, unit),
              sum: [],
            }}
          >
            {words.birth(note)}
          </Why>
        )}
        {note !== null && note.is !== 'normal' && <span className="note">{words.puppyNote.closely(puppy?.sex ?? 'unseen')}</span>}
      </dd>
      <dt>{words.puppyNote.milestones}</dt>
      <dd>
        <Why
          explanation={{
            figure: milestones.length === 0 ? words.puppyNote.notYet : words.milestone(milestones),
            how: words.puppyNote.milestonesHow,
            sum: [],
          }}
        >
          {milestones.length === 0 ? words.puppyNote.notYet : words.milestone(milestones)}
        </Why>
      </dd>
    </>
  );
}
