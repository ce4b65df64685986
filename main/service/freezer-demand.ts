/** The facts of everyone who eats from the freezer; what they eat is put together in core. */
import { dateOf } from '../../core/calendar/clock.ts';
import type { CivilDate } from '../../core/calendar/day.ts';
import { foodCatalogue } from '../../core/food/catalogue.ts';
import { type Demand, demandOf, eatsBetween } from '../../core/freezer/demand.ts';
import { catalogueOf } from '../../core/words/catalogue.ts';
import { allDams } from '../store/dogs.ts';
import { feedings, storedFoods } from '../store/food.ts';
import { eatersOf } from '../store/freezer.ts';
import { allLitters, puppiesOf } from '../store/litter.ts';
import { rulesFacts } from './feeding.ts';
import type { Context } from './handlers.ts';
import { ownWeaningFacts } from './weaning.ts';

/** Every meal of every eater on these days, both included. */
export function demandBetween(c: Context, from: CivilDate, until: CivilDate): Demand[] {
  const { db } = c.store;
  const litters = allLitters(db)
    .map((litter) => ({ litter, puppies: puppiesOf(db, litter.id) }))
    .filter((own) => eatsBetween(own, from, until))
    .map(({ litter, puppies }) => ownWeaningFacts(c, litter, puppies));
  const facts = {
    today: dateOf(c.now().local),
    rules: rulesFacts(c),
    catalogue: foodCatalogue(storedFoods(db)),
    feedings: feedings(db),
    eaters: eatersOf(db),
    dams: allDams(db),
    litterName: catalogueOf('en').litterName,
    litters,
  };
  return demandOf(facts, from, until);
}
