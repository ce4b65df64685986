import type { Finding, RuleChange } from '../../core/feeding/finding.ts';
import type { MassUnit } from '../../core/units/mass.ts';
import { words } from '../state/words.ts';
import './findings.css';

/** What mends a finding, in words: "Make it 6.1 %". */
export function changeWords({ key, value }: RuleChange): string {
  const isShare = key.startsWith('share') || key === 'boneShare';
  return words.finding.what[key](isShare ? words.percentText(Number(value), 1).replace(/\D+$/, '') : String(value));
}

/** Findings one under another: fact, what mends it, the one action that does, the source. */
export function FindingLines({
  findings,
  unit,
  action,
  also = () => '',
}: {
  findings: readonly Finding[];
  unit: MassUnit;
  /** Takes the change that mends a finding; null where nothing can be changed here. */
  action: { readonly word: (what: string) => string; readonly take: (change: RuleChange) => void } | null;
  /** Whom it holds for, too. */
  also?: (finding: Finding) => string;
}) {
  return (
    <ul className="finding-lines">
      {findings.map((finding) => {
        const said = words.finding.say(finding, unit);
        return (
          <li key={`${finding.code} ${said.sentence}`} className={`finding-line finding-${finding.severity}`}>
            <b className="finding-severity">{words.finding.severities[finding.severity]}</b>
            <div>
              <p>
                {said.sentence} {said.mend} {also(finding)}
              </p>
              <p className="note">{words.finding.sourceLine(said.source, finding.known)}</p>
            </div>
            {action !== null && finding.change !== undefined && (
              <MendButton change={finding.change} word={action.word} take={action.take} />
            )}
          </li>
        );
      })}
    </ul>
  );
}

function MendButton(props: { change: RuleChange; word: (what: string) => string; take: (change: RuleChange) => void }) {
  return (
    <button type="button" className="button finding-mend" onClick={() => props.take(props.change)}>
      {props.word(changeWords(props.change))}
    </button>
  );
}
