import { dateOf } from '../../core/calendar/clock.ts';
import { type CivilDate, daysBetween } from '../../core/calendar/day.ts';
import type { Assessment, LitterGrowth } from '../../core/growth/assess.ts';
import type { GrowthInput } from '../../core/growth/input.ts';
import { weighInOrder } from '../../core/litter/in-the-house.ts';
import { type Puppy, puppyName } from '../../core/litter/litter.ts';
import type { MassUnit } from '../../core/units/mass.ts';
import { weighingsCount } from '../facts/weighings-count.ts';
import { href } from '../links.ts';
import { DriftLine, type DriftPoint } from '../parts/DriftLine.tsx';
import { words } from '../state/words.ts';

interface Props {
  litterId: string;
  puppies: readonly Puppy[];
  growth: LitterGrowth;
  input: GrowthInput;
  unit: MassUnit;
  today: CivilDate;
  /** Who is weighed in the weigh-in under way; null outside one, when nobody is pale. */
  weighedIds: ReadonlySet<string> | null;
}

/** The litter on its drift line. */
export function LitterDrift({ puppies, growth, input, unit, today, weighedIds }: Props) {
  const inHouse = weighInOrder(puppies, today);
  const points: DriftPoint[] = [];
  for (const puppy of inHouse) {
    const a = growth.puppies.get(puppy.id);
    if (a === undefined || a.standing === null) continue;
    const count = weighingsCount(input, puppy.id);
    points.push({
      puppyId: puppy.id,
      name: puppyName(puppy),
      collar: puppy.collar,
      standing: a.standing,
      before: a.standingBefore,
      level: a.level,
      tooSoon: a.level === 'steady' && count !== 'more' ? words.growth.known[count] : null,
      sentence: a.level === 'steady' ? null : driftSentence(a, today),
      weighedNow: weighedIds === null || weighedIds.has(puppy.id),
    });
  }
  if (points.length === 0) {
    const weighed = inHouse.some((p) => growth.puppies.get(p.id)?.grams != null);
    return <p className="soft">{weighed ? words.growth.alone : words.growth.noWeights}</p>;
  }
  return (
    <DriftLine
      points={points}
      medianGrams={growth.medianGrams}
      unit={unit}
      single={inHouse.length === 1}
      linkTo={(puppyId) => href({ at: 'puppy', puppyId, view: 'notes' })}
    />
  );
}

function driftSentence(a: Assessment, today: CivilDate): string {
  if (a.standing === null) return '';
  const before = a.beforeAt === null ? null : dateOf(a.beforeAt);
  const day =
    before === null
      ? null
      : daysBetween(before, today) < 7
        ? (words.longDate(before).split(' ')[0] ?? null)
        : words.longDate(before);
  return words.growth.wasStanding(a.standing, a.standingBefore, day);
}
