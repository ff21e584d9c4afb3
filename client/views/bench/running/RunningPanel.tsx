import { Mark } from "../../../ui/Mark.tsx";
import type { Running } from "./result.ts";

/** What the readings so far say, beside the form. */
export function RunningPanel({ running }: { readonly running: Running }) {
  return (
    <section class="bench-running" aria-label="Result so far">
      <h2>So far</h2>
      {running.figures.length > 0 && (
        <dl class="bench-figures">
          {running.figures.map((figure) => (
            <div key={figure.label}>
              <dt>{figure.label}</dt>
              <dd>
                {figure.text} {figure.mark && <Mark word={figure.mark} />}
              </dd>
            </div>
          ))}
        </dl>
      )}
      {running.next && (
        <p class="bench-next" role="status">
          <span class="quiet">Next:</span> {running.next}
        </p>
      )}
      {running.notes.map((note) => (
        <p key={note} class="quiet small">
          {note}
        </p>
      ))}
    </section>
  );
}
