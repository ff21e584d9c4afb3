import type { ComponentChildren } from "preact";
import { TERMS, type Term as TermName } from "../../shared/book/glossary.ts";
import { Term } from "./Term.tsx";

/** A letter with a subscript, as plain text has it: C_T. */
const SUBSCRIPTED = /(?<!\p{L})(\p{L})_(\p{L}{1,4})(?!\p{L})/gu;
/** A symbol that the glossary has: a Greek letter alone, or a letter with a subscript. */
const SYMBOL = /(?<!\p{L})([φψλημκ]|K_v|C_T|C_P)(?!\p{L})/gu;

const isTerm = (word: string): word is TermName => word in TERMS;

/** Cuts a text at what a pattern finds; every other piece is a finding. */
function cut(text: string, pattern: RegExp): readonly string[] {
  const pieces: string[] = [];
  let from = 0;
  for (const { 0: found, index } of text.matchAll(pattern)) {
    pieces.push(text.slice(from, index), found);
    from = index + found.length;
  }
  return [...pieces, text.slice(from)];
}

/** A text whose symbols have their subscripts set low. */
export function Subscripts({ text }: { readonly text: string }): ComponentChildren {
  return cut(text, SUBSCRIPTED).map((piece, i) => {
    if (i % 2 === 0) return piece;
    const [letter, low] = piece.split("_");
    return (
      <span key={i} class="symbol">
        {letter}
        <sub>{low}</sub>
      </span>
    );
  });
}

/** A text whose symbols say what they mean. */
export function Terms({ text }: { readonly text: string }): ComponentChildren {
  return cut(text, SYMBOL).map((piece, i) => {
    if (i % 2 === 0 || !isTerm(piece)) return piece;
    return (
      <Term key={i} of={piece}>
        <Subscripts text={piece} />
      </Term>
    );
  });
}
