/** What stands in the fields of the weigh-in and was not entered yet, a draft a puppy. */
import { useState } from 'react';
import type { TypedFault } from '../../../core/growth/scale/wedge.ts';
import type { Grams } from '../../../core/units/mass.ts';

export interface Draft {
  readonly text: string;
  /** Why it could not be read when it was entered. */
  readonly fault: TypedFault | null;
  /** What the scale said, as long as nothing was typed over it. */
  readonly fromScale: Grams | null;
}

export interface Typed {
  of(puppyId: string | null): Draft | undefined;
  put(puppyId: string, draft: Draft): void;
  forget(puppyId: string): void;
}

export function useTyped(): Typed {
  const [drafts, setDrafts] = useState<ReadonlyMap<string, Draft>>(new Map());
  return {
    of: (puppyId) => (puppyId === null ? undefined : drafts.get(puppyId)),
    put: (puppyId, draft) => setDrafts((all) => new Map(all).set(puppyId, draft)),
    forget: (puppyId) => setDrafts((all) => new Map([...all].filter(([id]) => id !== puppyId))),
  };
}
