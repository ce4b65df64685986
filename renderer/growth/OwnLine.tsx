import { noPlace } from '../../core/growth/own-line/no-place.ts';
import { type OwnLineCurve, placeInLine } from '../../core/growth/own-line/own-line.ts';
import type { SeriesPoint } from '../../core/growth/series.ts';
import type { Sex } from '../../core/reference/classes.ts';
import type { MassUnit } from '../../core/units/mass.ts';
import { Why } from '../parts/Why.tsx';
import { words } from '../state/words.ts';

/** Where a puppy is beside the breeder's own line: a note, never a level. */
export function OwnLine({
  line,
  breed,
  series,
  sex,
  unit,
}: {
  line: OwnLineCurve;
  breed: string;
  series: readonly SeriesPoint[];
  sex: Sex;
  unit: MassUnit;
}) {
  const place = placeInLine(line, series);
  const sentence = place === null ? words.ownLine.noPlace(noPlace(line, breed, series)) : words.ownLine.place(place, sex);
  return (
    <section className="part">
      <h2>{words.puppyNote.ownLine}</h2>
      {place === null ? (
        <p className="line soft">{sentence}</p>
      ) : (
        <>
          <p>
            <Why explanation={{ figure: sentence, how: words.ownLine.how(place, series.at(-1)?.grams ?? 0, unit), sum: [] }}>
              {sentence}
            </Why>{' '}
            {words.ownLine.gain(place, sex)}
          </p>
          <p className="note">{words.puppyNote.ownLineNote}</p>
        </>
      )}
    </section>
  );
}
