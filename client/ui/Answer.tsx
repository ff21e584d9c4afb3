import type { ComponentChildren } from "preact";
import { Subscripts } from "./Subscripts.tsx";
import { Terms } from "./Terms.tsx";

/** The view's answer: one sentence as heading, one line of figures under it. */
export function Answer({ sentence, children }: { sentence: string; children?: ComponentChildren }) {
  return (
    <div class="answer">
      <h1>
        <Subscripts text={sentence} />
      </h1>
      {children && (
        <p class="answer-figures">{typeof children === "string" ? <Terms text={children} /> : children}</p>
      )}
    </div>
  );
}
