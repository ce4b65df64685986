import type { ReactNode } from 'react';
import { useState } from 'react';
import type { CivilDate } from '../../core/calendar/day.ts';
import type { RuleChange } from '../../core/feeding/finding.ts';
import { rulesFindings } from '../../core/feeding/findings.ts';
import { DEFAULT_RULES, type HouseRules, type RulesFacts, type RulesVersion, rulesOn } from '../../core/feeding/rules.ts';
import type { RuleKey } from '../../core/words/en/feeding.ts';
import { useToday } from '../data/now.ts';
import { run, useQuery } from '../data/query.ts';
import { useFoodOn } from '../facts/useFoods.ts';
import { useLittersInHouse } from '../facts/useLitter.ts';
import { useHouse } from '../facts/useLitterGrowth.ts';
import { FindingLines } from '../parts/FindingLines.tsx';
import { FormChoice, SavedChoice, SavedField } from '../parts/form/fields.tsx';
import { PageTitle } from '../parts/PageTitle.tsx';
import { useWindow } from '../state/window.ts';
import { words } from '../state/words.ts';
import { RulesEffect } from './RulesEffect.tsx';
import { changedKeys, contradiction, isChoice, isClock, RULE_GROUPS, readRule, ruleText, withRule } from './rule-list.ts';
import './rules.css';
import { TableHead } from '../parts/TableHead.tsx';

/** Her feeding rules beside what is published, of the house or of one litter; the house itself, and the food that is reckoned with. */
export function RulesPage({ more }: { more: ReactNode }) {
  const asked = useQuery('feeding.rules', {});
  const today = useToday();
  const [litterId, setLitterId] = useState<string | null>(null);
  const versions = asked.value?.versions;
  const all = asked.value;
  const inForce = all === null ? null : rulesOn(all, litterId, today);
  const rules = inForce?.rules ?? null;
  return (
    <>
      <PageTitle
        title={words.rules.title}
        lead={versions !== undefined && versions.length > 1 ? words.rules.lead : words.rules.leadCommon}
      />
      <WhoseRules
        litterId={litterId}
        choose={setLitterId}
        own={litterId !== null && all?.ofLitters.some((v) => v.id === inForce?.id) === true}
        today={today}
      />
      {rules !== null && all !== null && (
        <Rules
          key={litterId}
          litterId={litterId}
          rules={rules}
          versions={litterId === null ? all.versions : versionsOf(all, litterId)}
          today={today}
        />
      )}
      {more}
    </>
  );
}

/** Of the house or of a litter that is here; a litter goes by the house until a rule is changed for it. */
function WhoseRules(props: {
  litterId: string | null;
  choose: (litterId: string | null) => void;
  own: boolean;
  today: CivilDate;
}) {
  const { litterId, choose, own, today } = props;
  const litters = useLittersInHouse();
  return (
    <div className="rules-whose">
      <div className="form">
        <FormChoice
          label={words.rules.whose}
          value={litterId ?? ''}
          options={[
            { value: '', word: words.rules.ofHouse },
            ...litters.map((l) => ({ value: l.litter.id, word: words.litterName(l.litter) })),
          ]}
          onChange={(id) => choose(id === '' ? null : id)}
        />
      </div>
      {litterId !== null && (
        <p className="line">
          {own ? words.rules.ofItsOwn : words.rules.goesByHouse}
          {own && (
            <button
              type="button"
              className="link"
              onClick={() => void run('feeding.setLitterRules', { litterId, from: today, change: null })}
            >
              {words.rules.backToHouse}
            </button>
          )}
        </p>
      )}
    </div>
  );
}

/** A litter's versions over those of the house that were in force before its first. */
function versionsOf({ versions, ofLitters }: RulesFacts, litterId: string): RulesVersion[] {
  const own = ofLitters.filter((v) => v.litterId === litterId);
  return [
    ...own.map((v) => ({ id: v.id, from: v.from, rules: rulesOn({ versions, ofLitters }, litterId, v.from).rules })),
    ...versions,
  ];
}

/** Sends one rule. Null when saved, else the sentence for its row. */
async function saveRule(key: RuleKey, text: string, today: CivilDate, litterId: string | null): Promise<string | null> {
  const change = readRule(key, text);
  if (!change.ok) return change.sentence;
  const asked = { from: today, change: change.value };
  const done =
    litterId === null
      ? await run('feeding.setRules', asked, { quiet: true })
      : await run('feeding.setLitterRules', { litterId, ...asked }, { quiet: true });
  if (done.ok) return null;
  if (done.error.code === 'bad-input') return contradiction(done.error.field?.split('.')[1] ?? '');
  useWindow.getState().setFailure(done.error);
  return words.form.notSaved;
}

function Rules(props: { litterId: string | null; rules: HouseRules; versions: readonly RulesVersion[]; today: CivilDate }) {
  const { litterId, rules, versions, today } = props;
  const [opened] = useState(rules);
  const [tried, setTried] = useState<{ key: RuleKey; rules: HouseRules } | null>(null);
  const trying = (key: RuleKey) => (text: string | null) => {
    const changed = text === null ? null : withRule(rules, key, text);
    setTried(changed?.ok === true ? { key, rules: changed.value } : null);
  };
  const save = async (key: RuleKey, text: string) => {
    const refused = await saveRule(key, text, today, litterId);
    setTried(null);
    return refused;
  };
  return (
    <>
      {RULE_GROUPS.map(({ group, keys }, i) => (
        <section key={group} className={i === 0 ? 'rules-group' : 'part'}>
          <h2>{words.rules.groups[group]}</h2>
          <table className="rules">
            <TableHead heads={[words.rules.rule, words.rules.yours, words.rules.common, words.rules.published]} />
            <tbody>
              {keys.map((key) => (
                <RuleRow key={key} rule={key} rules={rules} onTry={trying(key)} save={(text) => save(key, text)} />
              ))}
            </tbody>
          </table>
          {group === 'amounts' && (
            <>
              <p className="note rules-note">{words.rules.glide}</p>
              <p className="note rules-note">{words.rules.tension}</p>
              <RulesFound rules={tried?.rules ?? rules} litterId={litterId} today={today} />
            </>
          )}
          {group === 'meals' && (
            <RulesEffect opened={opened} rules={rules} tried={tried?.rules ?? null} today={today} litterId={litterId} />
          )}
        </section>
      ))}
      <Versions versions={versions} />
    </>
  );
}

/** What is found about the rules themselves, with the food that is fed: here, and on no page of a puppy. */
function RulesFound({ rules, litterId, today }: { rules: HouseRules; litterId: string | null; today: CivilDate }) {
  const { massUnit } = useHouse();
  const found = rulesFindings(rules, useFoodOn(litterId, rules, today, today));
  if (found.length === 0) return null;
  const take = ({ key, value }: RuleChange) => {
    const asked = { from: today, change: { [key]: value } };
    void (litterId === null ? run('feeding.setRules', asked) : run('feeding.setLitterRules', { litterId, ...asked }));
  };
  return <FindingLines findings={found} unit={massUnit} action={{ word: words.finding.mend, take }} />;
}

function shown(key: RuleKey, text: string): string {
  if (isChoice(key)) {
    const choices: Record<string, string> = words.choice[key];
    return choices[text] ?? text;
  }
  const unit = words.rules.units[key];
  return unit === '' ? text : words.rules.withUnit(text, unit);
}

function RuleRow(props: {
  rule: RuleKey;
  rules: HouseRules;
  onTry: (text: string | null) => void;
  save: (text: string) => Promise<string | null>;
}) {
  const { rule: key, rules, save } = props;
  const [refused, setRefused] = useState<string | null>(null);
  const rule = words.rule[key];
  const text = ruleText(rules, key);
  const usual = ruleText(DEFAULT_RULES, key);
  return (
    <tr>
      <th scope="row">{rule.rule}</th>
      <td className="rules-yours">
        <RuleField rule={key} text={text} rules={rules} onTry={props.onTry} save={save} />
        {key === 'keepHours' && rules.keepHours > officialHours(rules) && (
          <span className="rules-official">{words.rules.longerThanOfficial(officialHours(rules))}</span>
        )}
      </td>
      <td data-label={words.rules.common} className="rules-usual">
        {rule.usual ?? shown(key, usual)}
        {text !== usual && (
          <button
            type="button"
            className="link rules-reset"
            aria-label={words.rules.resetTo(rule.rule, shown(key, usual))}
            onClick={() => void save(usual).then(setRefused)}
          >
            {words.rules.backTo(shown(key, usual))}
          </button>
        )}
        <span className="rules-refused" role="status">
          {refused}
        </span>
      </td>
      <td data-label={words.rules.published} className="rules-published">
        {rule.official === true && <b>{words.rules.caution} </b>}
        {rule.published ?? <span className="soft">{words.rules.noneFound}</span>}
      </td>
    </tr>
  );
}

function officialHours(rules: HouseRules): number {
  return rules.officialKeeping === 'us' ? 48 : 24;
}

function RuleField(props: {
  rule: RuleKey;
  text: string;
  rules: HouseRules;
  onTry: (text: string | null) => void;
  save: (text: string) => Promise<string | null>;
}) {
  const { rule: key, text, rules, save } = props;
  const label = words.rule[key].rule;
  if (isChoice(key)) {
    const options = Object.entries(words.choice[key]).map(([value, word]) => ({ value, word }));
    return <SavedChoice inCell label={label} value={text} options={options} save={save} />;
  }
  const read = (typed: string) => {
    const changed = withRule(rules, key, typed);
    return changed.ok ? { ok: true as const, value: typed } : changed;
  };
  return (
    <SavedField
      inCell
      label={label}
      className="rules-field"
      inputMode={isClock(key) ? 'text' : 'decimal'}
      value={text}
      {...(words.rules.units[key] === '' ? {} : { hint: words.rules.units[key] })}
      read={read}
      onTry={props.onTry}
      save={save}
    />
  );
}

/** Every version with the day it began and what it changed. */
function Versions({ versions }: { versions: readonly RulesVersion[] }) {
  return (
    <section className="part">
      <h2>{words.rules.versions}</h2>
      <ul className="rules-versions">
        {versions.map((version, i) => {
          const before = versions[i + 1];
          return (
            <li key={version.id} className="line">
              <b>{before === undefined ? words.rules.versionDefault : words.rules.versionFrom(words.fullDate(version.from))}</b>
              {before !== undefined && <span className="soft">{whatChanged(before.rules, version.rules)}</span>}
            </li>
          );
        })}
      </ul>
    </section>
  );
}

function whatChanged(before: HouseRules, after: HouseRules): string {
  const keys = changedKeys(before, after);
  if (keys.length === 0) return words.rules.versionSame;
  return keys
    .map((key) => words.rules.change(words.rule[key].rule, shown(key, ruleText(before, key)), shown(key, ruleText(after, key))))
    .join('; ');
}
