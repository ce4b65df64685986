/** House rules and rules of a litter, by the day they come into force. */

import {
  changedRules,
  type HouseRules,
  type LitterRules,
  PROGRAM_RULES,
  type RulesChange,
  type RulesVersion,
  rulesOn,
} from '../../core/feeding/rules.ts';
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
import { aboutHouse, aboutLitter, litterOf, wholeOf } from './facts.ts';
import { type Context, command, type HandlersOf } from './handlers.ts';

export function feedingHandlers(c: Context): HandlersOf<'feeding'> {
  const { db } = c.store;
  return {
    'feeding.rules': () => rulesFacts(c),

    'feeding.setRules': ({ from, change }) =>
      command(c, 'feeding.setRules', (recorder) => {
        const old = rulesFrom(db, from);
        const rules = rulesWith(rulesOn(rulesFacts(c), null, from).rules, change);
        const version: RulesVersion = { id: old?.id ?? c.newId(), from, rules };
        if (old === null) insertRules(recorder, version);
        else updateRules(recorder, version);
        return { value: { version }, about: aboutHouse() };
      }),

    'feeding.setLitterRules': ({ litterId, from, change }) =>
      command(c, 'feeding.setLitterRules', (recorder) => {
        const litter = litterOf(c, litterId);
        const old = litterRulesFrom(db, litterId, from);
        const rules = change === null ? null : rulesWith(rulesOn(rulesFacts(c), litterId, from).rules, change);
        const version: LitterRules = { id: old?.id ?? c.newId(), litterId, from, rules };
        if (old === null) insertLitterRules(recorder, version);
        else updateLitterRules(recorder, version);
        return { value: { version }, about: aboutLitter(litter) };
      }),
  };
}

export function rulesFacts(c: Context): { versions: RulesVersion[]; ofLitters: LitterRules[] } {
  const { db } = c.store;
  return { versions: [...rulesVersions(db), PROGRAM_RULES], ofLitters: litterRules(db) };
}

function rulesWith(rules: HouseRules, change: RulesChange): HouseRules {
  return wholeOf(changedRules(rules, change));
}
