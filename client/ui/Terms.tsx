import type { ComponentChildren } from "preact";
import { TERMS, type Term as TermName } from "../../shared/book/glossary.ts";
import { cut } from "./Subscripts.tsx";
import { Term } from "./Term.tsx";

/** A symbol that the glossary has: a Greek letter alone, or a letter with a subscript. */
const SYMBOL = /(?<!\p{L})([φψλημκ]|K_v|C_T|C_P)(?!\p{L})/gu;

const isTerm = (word: string): word is TermName => word in TERMS;

/** A text whose symbols say what they mean. */
export function Terms({ text }: { readonly text: string }): ComponentChildren {
  return cut(text, SYMBOL).map((piece, i) => {
    if (i % 2 === 0 || !isTerm(piece)) return piece;
    return <Term key={i} of={piece} />;
  });
}
