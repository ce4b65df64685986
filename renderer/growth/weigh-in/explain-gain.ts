import type { LocalTime } from '../../../core/calendar/clock.ts';
import type { CivilDate } from '../../../core/calendar/day.ts';
import { puppyName } from '../../../core/litter/litter.ts';
import type { MassUnit } from '../../../core/units/mass.ts';
import { isolated } from '../../../core/words/isolated.ts';
import { now } from '../../data/now.ts';
import type { Explanation } from '../../state/window.ts';
import { words } from '../../state/words.ts';
import type { WeighInRow } from './rows.ts';
import './weigh-in.css';

/** How a gain came about, for the foot. */
export function explainGain(row: WeighInRow, grams: number, at: LocalTime, today: CivilDate, unit: MassUnit): Explanation {
  const name = puppyName(row.puppy);
  const before = row.before;
  if (before === null)
    return { figure: `${isolated(name)} ${words.massText(grams, unit)}.`, how: words.growth.firstWeight, sum: [] };
  const gain = grams - before.grams;
  const apart = (row.reading?.instant ?? now().instant) - before.instant;
  return {
    figure: `${words.signed(words.massText(Math.abs(gain), unit), gain)}, ${isolated(name)}.`,
    how: words.growth.explainGain(
      words.massText(grams, unit),
      words.when(at, today),
      words.massText(before.grams, unit),
      words.when(before.at, today),
      words.span(apart),
    ),
    sum: [],
  };
}
