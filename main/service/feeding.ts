/** House rules and rules of a litter, by the day they come into force. */

import { type LitterRules, PROGRAM_RULES, type RulesVersion } from '../../core/feeding/rules.ts';
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

const NOBODY: About = { who: '', grams: null, litterId: null, puppyId: null };

export function feedingHandlers(c: Context): HandlersOf<'feeding'> {
  const { db } = c.store;
  return {
    'feeding.rules': () => rulesFacts(c),

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

export function rulesFacts(c: Context): { versions: RulesVersion[]; ofLitters: LitterRules[] } {
  const { db } = c.store;
  return { versions: [...rulesVersions(db), PROGRAM_RULES], ofLitters: litterRules(db) };
}
