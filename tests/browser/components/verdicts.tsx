import type { UncertaintyState } from "#client/state/useUncertainty.ts";
import { CrossingStrip } from "#client/ui/crossing/CrossingStrip.tsx";
import { HowSure } from "#client/ui/HowSure.tsx";
import { StateMark } from "#client/ui/verdict/StateMark.tsx";
import { Band } from "#client/ui/verdict/VerdictBand.tsx";
import { VERDICT_STATES } from "#shared/decide/verdict/states.ts";
import { verdictOf } from "#shared/decide/verdict/verdict.ts";
import { type Change, findings } from "#tests/shared/decide/verdict/examples.ts";
import type { Shown } from "./shown.ts";

/** What brings findings that hold in every way into each state. */
const CHANGES: Readonly<Record<string, Change>> = {
  bursts: { factor: 0.92 },
  burns: { winding: 477.15, burnsAfter: 41 },
  falls: { parked: 0.83, chance: 0.04 },
  "over a rating": { ratings: { "motor-voltage": 1.06 } },
  tight: { parked: 1.22, chance: 0.97 },
  unsure: { chance: 0.72 },
  holds: {},
  "holds, over a joint": { crossing: 1.7 },
  "tests speak against each other": { contradictions: ["Two pulls at one gap differ by 40 %."] },
  "does not turn": { turns: false },
};

const sampling: UncertaintyState = {
  doubt: null,
  worst: null,
  asked: { uncertainty: { "skirt.gap": 1e-5 } },
  joints: null,
  sources: {},
  nothingStated: false,
  problem: null,
  busy: true,
};
const WAY = "Holds again from 26 000 rpm down: throttle 84 %.";

const crossed = findings({ crossing: 1.7 });

/** The verdict in every state, with what stands beside it. */
export const VERDICTS: readonly Shown[] = [
  ...Object.entries(CHANGES).map(([state, change]) => ({
    component: "Band",
    state,
    drawn: (
      <Band
        verdict={verdictOf(findings(change))}
        way={state.startsWith("holds") ? "" : WAY}
        target={1.5}
        sure={sampling}
      />
    ),
  })),
  ...VERDICT_STATES.map((state) => ({ component: "StateMark", state, drawn: <StateMark state={state} /> })),
  {
    component: "CrossingStrip",
    state: "one joint",
    drawn: <CrossingStrip crossings={crossed.crossings} target={1.5} state="holds" />,
  },
  { component: "HowSure", state: "sampling", drawn: <HowSure state={sampling} /> },
  {
    component: "HowSure",
    state: "nothing stated",
    drawn: <HowSure state={{ ...sampling, busy: false, nothingStated: true }} />,
  },
  {
    component: "HowSure",
    state: "could not be sampled",
    drawn: (
      <HowSure state={{ ...sampling, busy: false, problem: "It could not be sampled: reload the page." }} />
    ),
  },
];
