import type { Share } from "../../shared/decide/uncertainty.ts";
import type { UncertaintyState } from "../state/useUncertainty.ts";
import { HowFar } from "./Docs.tsx";
import { NOTHING_STATED, partText, shareParts, smallPartsText } from "./uncertaintyWords.ts";
import { ShareFigure } from "./working/SampledFigure.tsx";

/** Tints of the parts, which begin again after these; the order names them as well. */
const MIXED = 5;

/** What the uncertainty is made of, and where each part comes from; `ranges` names what shows the samples' spread. */
export function HowSure({ state, ranges = "ranges" }: { state: UncertaintyState; ranges?: string }) {
  const { doubt, sources, nothingStated, problem } = state;
  return (
    <section class="how-sure" aria-busy={state.busy} aria-label="What the uncertainty is made of">
      <h2>What the uncertainty is made of</h2>
      {nothingStated && <p>{NOTHING_STATED}</p>}
      {problem && <p>{problem}</p>}
      {!doubt && state.busy && <p class="quiet small">Sampling…</p>}
      {doubt && (
        <>
          <p class="quiet small">
            Shares of the uncertainty about driving on the tightest attitude. A chance is the share of samples
            that hold, by what is stated and by what the tests leave open; {ranges}: 90&#8239;% of them.
          </p>
          <Mixture shares={doubt.shares} sources={sources} />
          {doubt.over && (
            <>
              <h3>Over {doubt.over.joint.name}</h3>
              <Mixture shares={doubt.over.shares} sources={sources} />
            </>
          )}
        </>
      )}
      <HowFar />
    </section>
  );
}

interface MixtureProps {
  readonly shares: readonly Share[];
  readonly sources: UncertaintyState["sources"];
}

/** The parts as a bar, and each in words with its share. */
function Mixture({ shares, sources }: MixtureProps) {
  const parts = shareParts(shares, sources);
  return (
    <>
      <div class="mix" aria-hidden="true">
        {parts.map(({ key, share }, i) => (
          <span key={key} class={`mix-${i % MIXED}`} style={{ flexGrow: share }} />
        ))}
      </div>
      <ul class="shares">
        {parts.map((part, i) => (
          <li key={part.key}>
            <span class={`mix-swatch mix-${i % MIXED}`} aria-hidden="true" />
            <span>{partText(part)}</span>
            <span class="share">
              <ShareFigure part={part} />
            </span>
          </li>
        ))}
      </ul>
      <Small shares={shares} sources={sources} />
    </>
  );
}

/** What is counted and worth no line of its own. */
function Small({ shares, sources }: MixtureProps) {
  const text = smallPartsText(shares, sources);
  return text && <p class="quiet small">{text}</p>;
}
