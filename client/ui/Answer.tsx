import type { ComponentChildren } from "preact";

/** A figure and its unit are joined by a thin space, at which a line would break. */
const THIN_SPACE = "\u2009";
const NARROW_NO_BREAK_SPACE = "\u202f";

/** The view's answer: one sentence as heading, one line of figures under it. */
export function Answer({ sentence, children }: { sentence: string; children?: ComponentChildren }) {
  return (
    <div class="answer">
      <h1>{sentence.replaceAll(THIN_SPACE, NARROW_NO_BREAK_SPACE)}</h1>
      {children && <p class="answer-figures">{children}</p>}
    </div>
  );
}
