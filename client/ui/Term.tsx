import type { ComponentChildren } from "preact";
import { TERMS, type Term as TermName } from "../../shared/book/glossary.ts";
import { Explained } from "./explain/Explained.tsx";
import { Subscripts } from "./Subscripts.tsx";

/** A word or symbol of the glossary, explained where it stands. */
export function Term({ of, children }: { readonly of: TermName; readonly children?: ComponentChildren }) {
  return (
    <Explained word={of} meaning={TERMS[of]} class="term">
      {children ?? <Subscripts text={of} />}
    </Explained>
  );
}
