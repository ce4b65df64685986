import { useEffect, useRef, useState } from 'react';
import type { PlanDocument } from '../../core/homing/document.ts';
import { useToday } from '../data/now.ts';
import { run } from '../data/query.ts';
import { useLitterOfPuppy } from '../facts/useLitter.ts';
import { words } from '../state/words.ts';

/** Keeps the plan as it is today, and marks the puppy gone home in the same entry when it is. Undo takes both back. */
export function HandOver({ document, ready, why }: { document: PlanDocument; ready: boolean; why: string }) {
  const today = useToday();
  const [asked, setAsked] = useState(false);
  const stillHere = useLitterOfPuppy(document.puppyId)?.puppy.state !== 'home';
  const [chosen, setLeaves] = useState(true);
  // One that has left keeps the day on which it went.
  const leaves = chosen && stillHere;
  const [said, setSaid] = useState('');
  const keep = useRef<HTMLButtonElement>(null);
  const begin = useRef<HTMLButtonElement>(null);
  const wasAsked = useRef(false);
  // Asking replaces the button in hand by others: the focus goes along, and comes back.
  useEffect(() => {
    if (asked) keep.current?.focus();
    else if (wasAsked.current) begin.current?.focus();
    wasAsked.current = asked;
  }, [asked]);

  async function handOver() {
    const result = await run('homing.handOver', { puppyId: document.puppyId, on: today, leaves, why }, { quiet: true });
    setSaid(result.ok ? words.print.handedOver(document.name, leaves) : words.failure[result.error.code]);
    if (result.ok) setAsked(false);
  }

  return (
    <div className="print-row">
      {!asked && (
        <button type="button" className="button" ref={begin} disabled={!ready} onClick={() => setAsked(true)}>
          {words.print.handOver}
        </button>
      )}
      {asked && (
        <>
          <p>{words.print.handOverLead(document.name)}</p>
          {stillHere && (
            <label className="box">
              <input type="checkbox" checked={leaves} onChange={(event) => setLeaves(event.target.checked)} />
              {words.print.leaves(document.name)}
            </label>
          )}
          <button type="button" className="button" ref={keep} onClick={() => void handOver()}>
            {words.print.keep}
          </button>
          <button type="button" className="link" onClick={() => setAsked(false)}>
            {words.print.not}
          </button>
        </>
      )}
      <span role="status">{said}</span>
    </div>
  );
}
