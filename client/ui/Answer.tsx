import type { ComponentChildren } from "preact";

/** The view's answer: one sentence as heading, one line of figures under it. */
export function Answer({ sentence, children }: { sentence: string; children?: ComponentChildren }) {
  return (
    <div class="answer">
      <h1>{sentence}</h1>
      {children && <p class="answer-figures">{children}</p>}
    </div>
  );
}
