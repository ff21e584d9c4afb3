import { degreesText, marginText } from "../../shared/decide/verdict/figures.ts";
import { leastOf } from "../../shared/decide/verdict/findings.ts";
import { showsBuild } from "../state/build.ts";
import { shownOutcome } from "../state/shownOutcome.ts";
import { gradeOf } from "../ui/verdictWords.ts";
import { route } from "./router.ts";

/** Beside the build's name, on every view of it: the least margin there is, and where. */
export function BuildStanding() {
  if (!showsBuild(route.value.view)) return null;
  const prediction = shownOutcome.value?.prediction;
  const target = shownOutcome.value?.build.targetMargin ?? 1;
  const least = prediction ? leastOf({ worst: prediction.worst, attitudes: [] }) : null;
  return (
    <span class={`build-standing ${least ? gradeOf(least.margin, target) : "quiet"}`}>
      {least && (
        <>
          {marginText(least.margin)} <small>at {degreesText(least.angle)}</small>
        </>
      )}
    </span>
  );
}
