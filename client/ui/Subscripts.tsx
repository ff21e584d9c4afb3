import type { ComponentChildren } from "preact";

/** A letter with a subscript, as plain text has it: C_T. */
const SUBSCRIPTED = /(?<!\p{L})(\p{L})_(\p{L}{1,4})(?!\p{L})/gu;

/** @returns a text cut at what a pattern finds; every other piece is a finding */
export function cut(text: string, pattern: RegExp): readonly string[] {
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
