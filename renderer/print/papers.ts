/** The papers that a print address stands for, fetched from the host and fetched again when their facts change elsewhere. */
import { useEffect, useState } from 'react';
import type { LocalTime } from '../../core/calendar/clock.ts';
import { addDays, type CivilDate } from '../../core/calendar/day.ts';
import { OPERATIONS } from '../../core/contract/operations.ts';
import { type PaperDocument, type PaperOf, paperDocumentSchema } from '../../core/contract/paper.ts';
import type { ErrorCode, Tag } from '../../core/contract/result.ts';
import type { Puppy } from '../../core/litter/litter.ts';
import { call, onChanged } from '../data/host.ts';
import type { Route } from '../links.ts';

export type PrintRoute = Extract<Route, { at: 'print' }>;

/** A document with what it was made from, so that it can be saved; null for one out of a slot. */
export interface Paper {
  readonly of: PaperOf | null;
  readonly document: PaperDocument;
}

export type Papers =
  | { at: 'loading' }
  /** Without any when there is nothing to print. */
  | { at: 'ready'; papers: readonly Paper[] }
  | { at: 'failed'; code: ErrorCode };

/** What a document is made from, by the contract. */
const FACTS: readonly Tag[] = OPERATIONS['records.paper'].tags;

/** `now` is when the page was opened: a list that changes while it is printed is no list. */
export function usePapers(route: PrintRoute, today: CivilDate, now: LocalTime): Papers {
  const { of, id, day } = route;
  const [state, setState] = useState<{ key: string; value: Papers } | null>(null);
  const key = `${of} ${id} ${day ?? ''} ${today} ${now}`;

  useEffect(() => {
    let turn = 0;
    const load = async () => {
      turn += 1;
      const mine = turn;
      const value = await fetchPapers({ of, id, day }, today, now);
      if (mine === turn) setState({ key, value });
    };
    void load();
    // A slot is read once, so it is never asked for again.
    const deaf =
      of === 'slot'
        ? null
        : onChanged((tags) => {
            if (tags.some((t) => FACTS.includes(t))) void load();
          });
    return () => {
      turn = Number.NaN;
      deaf?.();
    };
  }, [of, id, day, today, now, key]);

  return state?.key === key ? state.value : { at: 'loading' };
}

/** Slots already read, so that drawing the page twice does not ask twice. */
const slots = new Map<string, Promise<Papers>>();

async function fetchPapers(route: Pick<PrintRoute, 'of' | 'id' | 'day'>, today: CivilDate, now: LocalTime): Promise<Papers> {
  const { of, id } = route;
  switch (of) {
    case 'puppy':
      return await made([{ kind: 'puppy', puppyId: id, on: today }]);
    case 'litter':
      return await litterPlans(id, today);
    case 'handed-over':
      return await made([{ kind: 'handed-over', planId: id }]);
    case 'prep':
      return await made([{ kind: 'prep', litterId: id, day: prepDay(route, today) }]);
    case 'thaw':
      return await made([{ kind: 'thaw', now }]);
    case 'labels':
      return await made([{ kind: 'labels', now, sheet: 'small', used: 0 }]);
    case 'slot': {
      const reading = slots.get(id) ?? fromSlot(id);
      slots.set(id, reading);
      return await reading;
    }
  }
}

/** The day of a prep sheet: tomorrow unless the address names one. */
export function prepDay(route: Pick<PrintRoute, 'day'>, today: CivilDate): CivilDate {
  return route.day ?? addDays(today, 1);
}

async function made(all: readonly PaperOf[]): Promise<Papers> {
  const papers: Paper[] = [];
  for (const of of all) {
    const result = await call('records.paper', { of });
    if (!result.ok) return { at: 'failed', code: result.error.code };
    if (result.value.document !== null) papers.push({ of, document: result.value.document });
  }
  return { at: 'ready', papers };
}

/** Those still in the litter: the ones that have left have their plan. */
async function litterPlans(litterId: string, on: CivilDate): Promise<Papers> {
  const all = await call('litter.all', {});
  if (!all.ok) return { at: 'failed', code: all.error.code };
  const facts = all.value.litters.find((l) => l.litter.id === litterId);
  if (facts === undefined) return { at: 'failed', code: 'not-found' };
  return await made(facts.puppies.filter(waitsForPlan).map((p) => ({ kind: 'puppy', puppyId: p.id, on })));
}

/** Whether a puppy is still to be homed. */
export function waitsForPlan(puppy: Pick<Puppy, 'state'>): boolean {
  return puppy.state === 'litter';
}

/** A document left by the host for the engine that makes the PDF. */
async function fromSlot(id: string): Promise<Papers> {
  try {
    const answer = await fetch(`/paper/${encodeURIComponent(id)}`);
    const parsed = answer.ok ? paperDocumentSchema.safeParse(await answer.json()) : null;
    if (parsed?.success !== true) return { at: 'failed', code: 'not-found' };
    return { at: 'ready', papers: [{ of: null, document: parsed.data }] };
  } catch {
    return { at: 'failed', code: 'unreachable' };
  }
}
