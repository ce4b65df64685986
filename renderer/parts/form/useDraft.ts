import { useRef, useState } from 'react';
import type { Read } from './read.ts';

/** Saves a value. Answers null when saved, else the sentence for under the field. */
export type Save<T> = (value: T) => Promise<string | null>;

export interface Draft {
  /** What stands in the field: what is being typed, else what is saved. */
  readonly text: string;
  readonly sentence: string | null;
  type(text: string): void;
  /** Saves what was typed if it can be read and differs from what is saved; else keeps it and says why. */
  commit(text?: string): Promise<void>;
  /** Back to what is saved. */
  drop(): void;
}

/** A field that is saved when it is left or on Enter. What was typed stays until it is saved or dropped. */
export function useDraft<T>(saved: string, read: (text: string) => Read<T>, save: Save<T>): Draft {
  const [draft, setDraft] = useState<string | null>(null);
  const [sentence, setSentence] = useState<string | null>(null);
  const sending = useRef<string | null>(null);
  const drop = () => {
    setDraft(null);
    setSentence(null);
  };
  const commit = async (given?: string) => {
    const text = given ?? draft;
    if (text === null || text === sending.current) return;
    if (text === saved) return drop();
    const answer = read(text);
    if (!answer.ok) {
      setDraft(text);
      return setSentence(answer.sentence);
    }
    sending.current = text;
    const refused = await save(answer.value);
    sending.current = null;
    setSentence(refused);
    if (refused === null) setDraft((now) => (now === text ? null : now));
  };
  const type = (text: string) => {
    setDraft(text);
    setSentence(null);
  };
  return { text: draft ?? saved, sentence, type, commit, drop };
}
