import type { Outcome } from "../../state/outcome.ts";
import { Missing } from "../Missing.tsx";

/** What is missing, each with the test that gives it. */
export function Lacking({ outcome, id, known }: { outcome: Outcome; id: string; known: boolean }) {
  return (
    <>
      {known && <h2>Missing for the rest</h2>}
      <Missing outcome={outcome} build={id} />
    </>
  );
}
