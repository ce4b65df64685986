import { useState } from 'react';
import { type ReadingFinding, readingIdsOf } from '../../core/growth/findings.ts';
import { isCurrent, type Puppy, puppyName, type Reading } from '../../core/litter/litter.ts';
import { run } from '../data/query.ts';
import type { LitterGrowthFacts } from '../facts/useLitterGrowth.ts';
import { CollarBand } from '../parts/CollarBand.tsx';
import { words } from '../state/words.ts';
import { ReadingMend } from './ReadingMend.tsx';
import './today.css';

/** Opens the answer under the line. */
function AnswerIt({ reading, facts }: { reading: Reading; facts: LitterGrowthFacts }) {
  const [open, setOpen] = useState(false);
  return (
    <>
      <button type="button" className="link" aria-expanded={open} onClick={() => setOpen(!open)}>
        {words.growth.answerIt}
      </button>
      {open && <ReadingMend reading={reading} facts={facts} close={() => setOpen(false)} />}
    </>
  );
}

/** A reading that does not fit, with its answers. A scale fault has none: weigh again. */
export function FindingLine({ finding, facts }: { finding: ReadingFinding; facts: LitterGrowthFacts }) {
  const { readingId, withReadingId } = finding;
  const reading = facts.readings.find((r) => r.id === readingId);
  return (
    <div className="line finding">
      <span>{words.growthFinding.reading(finding, facts.house.massUnit)}</span>
      {finding.kind === 'swap' && withReadingId !== null && (
        <button type="button" className="link" onClick={() => void run('growth.exchange', { readingId, withReadingId })}>
          {words.answer.exchangeThem}
        </button>
      )}
      {finding.kind !== 'scale' && (
        <button type="button" className="link" onClick={() => void run('growth.keep', { readingIds: readingIdsOf(finding) })}>
          {withReadingId === null ? words.answer.right : words.answer.theyAreRight}
        </button>
      )}
      {finding.kind === 'mistyped' && reading !== undefined && <AnswerIt reading={reading} facts={facts} />}
    </div>
  );
}

/** Weights kept but held out, waiting for an answer. */
export function Questions({ facts, order }: { facts: LitterGrowthFacts; order: readonly Puppy[] }) {
  const held = facts.readings.filter((r) => r.held && isCurrent(r));
  if (held.length === 0) return null;
  return (
    <section className="questions">
      <h2>{words.growth.question}</h2>
      {held.map((r) => {
        const puppy = order.find((p) => p.id === r.puppyId);
        if (puppy === undefined) return null;
        return (
          <div className="line finding" key={r.id}>
            <CollarBand collar={puppy.collar} height={20} label={null} />
            <span>{words.growth.questionMore(puppyName(puppy), words.massText(r.grams, facts.house.massUnit))}</span>
            <button type="button" className="link" onClick={() => void run('growth.keep', { readingIds: [r.id] })}>
              {words.answer.right}
            </button>
            <AnswerIt reading={r} facts={facts} />
          </div>
        );
      })}
    </section>
  );
}
