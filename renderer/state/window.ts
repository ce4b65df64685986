/** State of this window only: nothing here is a fact about a dog, and nothing here outlives the window. */
import { create } from 'zustand';
import type { ContractError } from '../../core/contract/result.ts';

/** One line for the foot: a figure, how it came about, and (behind "More") the worked sum. */
export interface Explanation {
  readonly figure: string;
  readonly how: string;
  readonly sum: readonly { readonly what: string; readonly figure: string; readonly source: string }[];
}

interface WindowState {
  explanation: Explanation | null;
  drawnUp: boolean;
  failure: ContractError | null;
  /** Chosen for this run; null follows the house. */
  theme: 'day' | 'night' | null;
  explain(e: Explanation | null): void;
  drawUp(up: boolean): void;
  setFailure(error: ContractError | null): void;
  setTheme(theme: 'day' | 'night' | null): void;
}

export const useWindow = create<WindowState>()((set) => ({
  explanation: null,
  drawnUp: false,
  failure: null,
  theme: null,
  explain: (explanation) => set({ explanation }),
  drawUp: (drawnUp) => set({ drawnUp }),
  setFailure: (failure) => set({ failure }),
  setTheme: (theme) => set({ theme }),
}));
