import type { ComponentChildren } from "preact";

/** What went wrong, in a sentence, and what can be done about it. */
export function Problem({ message, children }: { message: string; children?: ComponentChildren }) {
  return (
    <div class="problem" role="alert">
      <p>{message}</p>
      {children}
    </div>
  );
}
