import type { FormState } from "./draft.ts";

/** What was typed and not saved, with the revision it was typed over. */
interface Kept {
  readonly state: FormState;
  readonly revision: number | null;
}

const keyOf = (address: string): string => `gripcurve parts/${address}`;

/** @returns what was typed at an address in this tab over that very revision and not saved; null where nothing was */
export function keptState(address: string, revision: number | null): FormState | null {
  const text = sessionStorage.getItem(keyOf(address));
  if (text === null) return null;
  try {
    const kept = JSON.parse(text) as Kept;
    return kept.revision === revision ? kept.state : null;
  } catch (error) {
    if (error instanceof SyntaxError) return null;
    throw error;
  }
}

/** Keeps what is typed until it is saved, through a look at another view or a reload; a full store keeps the last that fitted. */
export function keepState(address: string, state: FormState, revision: number | null): void {
  try {
    sessionStorage.setItem(keyOf(address), JSON.stringify({ state, revision } satisfies Kept));
  } catch (error) {
    if (!(error instanceof DOMException)) throw error;
  }
}

export function forgetState(address: string): void {
  sessionStorage.removeItem(keyOf(address));
}
