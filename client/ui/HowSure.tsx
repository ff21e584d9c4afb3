import type { UncertaintyState } from "../state/useUncertainty.ts";
import { NOTHING_STATED, shareParts, shareText } from "./uncertaintyWords.ts";

/** What the doubt is made of, and where each part comes from; `ranges` names what shows the samples' spread. */
export function HowSure({ state, ranges = "Ranges" }: { state: UncertaintyState; ranges?: string }) {
  const { doubt, sources, nothingStated, problem } = state;
  const parts = doubt ? shareParts(doubt.shares, sources) : [];
  return (
    <section class="how-sure" aria-busy={state.busy} aria-label="How sure">
      <h2>How sure</h2>
      {nothingStated && <p>{NOTHING_STATED}</p>}
      {problem && <p>{problem}</p>}
      {!doubt && state.busy && <p class="quiet small">Sampling…</p>}
      {doubt && (
        <>
          <p class="quiet small">
            Sure: the share of samples that hold, by what is stated and by what the tests leave open. {ranges}
            : 90&#8239;% of the samples. What the doubt about driving on the worst attitude is made of:
          </p>
          <ul class="shares">
            {parts.map((part) => (
              <li key={part.key}>
                <span class="share">{shareText(part.share)}</span> {part.what}
              </li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}
