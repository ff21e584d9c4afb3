import type { ComponentChildren } from "preact";
import { TERMS, type Term as TermName } from "../../shared/book/glossary.ts";
import { Explained } from "./explain/Explained.tsx";

/** A word or symbol of the glossary, explained where it stands. */
export function Term({ of, children }: { readonly of: TermName; readonly children?: ComponentChildren }) {
  return (
    <Explained word={of} meaning={TERMS[of]} class="term">
      {children ?? of}
    </Explained>
  );
}
