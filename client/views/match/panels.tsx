import { useMemo } from "preact/hooks";
import type { Book } from "../../../shared/book/resolve.ts";
import type { Outcome } from "../../state/outcome.ts";
import { useSettled } from "../../state/useSettled.ts";
import type { UncertaintyState } from "../../state/useUncertainty.ts";
import { Later } from "../../ui/Later.tsx";
import type { Shares } from "./sensitivities/bars.ts";

const partial = () => import("./partial/PartialMatch.tsx");
const ways = () => import("./ways/WaysToHold.tsx");
const next = () => import("./nextTest/NextTest.tsx");
const moves = () => import("./sensitivities/Sensitivities.tsx");

/** Once the first verdict stands, panels are worked out one after another while the page rests. */
interface Rested {
  readonly rested: boolean;
}

/** Ways to hold, in a chunk of its own; stands still while a handle is held. */
export function WaysPanel({ book, outcome, rested }: { book: Book; outcome: Outcome } & Rested) {
  const still = useSettled(outcome);
  return useMemo(
    () => (
      <Later
        load={ways}
        what="Ways to hold"
        props={{ book, outcome: still }}
        rested={rested}
        class="ways-place"
      />
    ),
    [book, still, rested],
  );
}

/** What moves the margin, likewise. */
export function MovesPanel({
  outcome,
  shares,
  rested,
}: { outcome: Outcome; shares: Shares | null } & Rested) {
  const still = useSettled(outcome);
  const known = useSettled(shares);
  return useMemo(
    () => (
      <Later
        load={moves}
        what="What moves the margin"
        props={{ outcome: still, shares: known }}
        rested={rested}
        class="moves-place"
      />
    ),
    [still, known, rested],
  );
}

interface NextPanelProps extends Rested {
  readonly book: Book;
  readonly outcome: Outcome;
  readonly sure: UncertaintyState;
  /** of the stored build */
  readonly id: string;
}

/** The next test, likewise. */
export function NextPanel({ book, outcome, sure, id, rested }: NextPanelProps) {
  const still = useSettled(outcome);
  const known = useSettled(sure);
  return useMemo(
    () => (
      <Later
        load={next}
        what="Next test"
        props={{ book, outcome: still, sure: known, id }}
        rested={rested}
        class="next-place"
      />
    ),
    [book, still, known, id, rested],
  );
}

/** Answer, point and verdict of a build that lacks something. */
export function PartialPanel(props: { book: Book; outcome: Outcome; id: string }) {
  return <Later load={partial} what="What is known" props={props} />;
}
