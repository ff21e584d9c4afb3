import type { Draft } from "../record/draft.ts";

/** What was typed and not saved, with the revision it was typed over. */
export interface KeptDraft {
  readonly draft: Draft;
  readonly revision: number | null;
}

const keyOf = (address: string): string => `gripcurve ${address}`;

/** @returns what was typed at an address in this tab and not saved; null where nothing was */
export function keptDraft(address: string): KeptDraft | null {
  const text = sessionStorage.getItem(keyOf(address));
  if (text === null) return null;
  try {
    return JSON.parse(text) as KeptDraft;
  } catch (error) {
    if (error instanceof SyntaxError) return null;
    throw error;
  }
}

/** Keeps what is typed until it is saved, through a look at another view or a reload; a full store keeps the last that fitted. */
export function keepDraft(address: string, kept: KeptDraft): void {
  try {
    sessionStorage.setItem(keyOf(address), JSON.stringify(kept));
  } catch (error) {
    if (!(error instanceof DOMException)) throw error;
  }
}

export function forgetDraft(address: string): void {
  sessionStorage.removeItem(keyOf(address));
}
