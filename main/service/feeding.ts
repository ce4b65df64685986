/** House rules and rules of a litter, by the day they come into force. */

import { type CivilDate, date } from '../../core/calendar/day.ts';
import { DEFAULT_RULES, type LitterRules, ownRulesOn, type RulesVersion } from '../../core/feeding/rules.ts';
import {
  insertLitterRules,
  insertRules,
  litterRules,
  litterRulesFrom,
  rulesFrom,
  rulesVersions,
  updateLitterRules,
  updateRules,
} from '../store/feeding.ts';
import type { About } from '../store/journal.ts';
import { aboutLitter, litterOf } from './facts.ts';
import { type Context, command, type HandlersOf } from './handlers.ts';

/** The rules of a breeder who has not written her own. */
const DEFAULTS: RulesVersion = { id: 'defaults', from: date('2026-01-01'), rules: DEFAULT_RULES };
const NOBODY: About = { who: '', grams: null, litterId: null, puppyId: null };

export function feedingHandlers(c: Context): HandlersOf<'feeding'> {
  const { db } = c.store;
  return {
    'feeding.rules': () => ({ versions: [...rulesVersions(db), DEFAULTS], ofLitters: litterRules(db) }),

    'feeding.setRules': ({ from, rules }) => {
      const old = rulesFrom(db, from);
      const version: RulesVersion = { id: old?.id ?? c.newId(), from, rules };
      return command(c, 'feeding.setRules', (recorder) => {
        if (old === null) insertRules(recorder, version);
        else updateRules(recorder, version);
        return { value: { version }, about: NOBODY };
      });
    },

    'feeding.setLitterRules': ({ litterId, from, rules }) => {
      const litter = litterOf(c, litterId);
      const old = litterRulesFrom(db, litterId, from);
      const version: LitterRules = { id: old?.id ?? c.newId(), litterId, from, rules };
      return command(c, 'feeding.setLitterRules', (recorder) => {
        if (old === null) insertLitterRules(recorder, version);
        else updateLitterRules(recorder, version);
        return { value: { version }, about: aboutLitter(litter) };
      });
    },
  };
}

/** The version in force on a day: the litter's own, else the house's latest that has begun, else the defaults. */
export function rulesOn(c: Context, day: CivilDate, litterId: string): RulesVersion {
  const { db } = c.store;
  return ownRulesOn(litterRules(db), litterId, day) ?? rulesVersions(db).find((v) => v.from <= day) ?? DEFAULTS;
}
