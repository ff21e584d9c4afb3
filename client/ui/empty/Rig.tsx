/// <reference types="vite/client" />
import curve from "../../../docs/rigs/curve.md?raw";
import curveDrawing from "../../../docs/rigs/curve.svg?raw";
import friction from "../../../docs/rigs/friction.md?raw";
import frictionDrawing from "../../../docs/rigs/friction.svg?raw";
import motor from "../../../docs/rigs/motor.md?raw";
import motorDrawing from "../../../docs/rigs/motor.svg?raw";
import pull from "../../../docs/rigs/pull.md?raw";
import pullDrawing from "../../../docs/rigs/pull.svg?raw";
import { Caution } from "../Caution.tsx";
import { DocLink } from "../Docs.tsx";
import { rigWords } from "./rigWords.ts";

/** Tests that fill an empty bench. */
export type FirstTest = "motor" | "curve" | "friction" | "pull";

const RIGS: Readonly<Record<FirstTest, readonly [page: string, drawing: string]>> = {
  motor: [motor, motorDrawing],
  curve: [curve, curveDrawing],
  friction: [friction, frictionDrawing],
  pull: [pull, pullDrawing],
};

/** How a test is set up: its rig drawn, what it takes, what can hurt, and the way to its page. */
export default function Rig({ kind }: { readonly kind: FirstTest }) {
  const [page, drawing] = RIGS[kind];
  const { takes, caution } = rigWords(page);
  return (
    <div class="rig">
      <div class="rig-drawing" dangerouslySetInnerHTML={{ __html: drawing }} />
      <p class="small">
        {takes} <DocLink path={`rigs/${kind}.md`}>How to</DocLink>
      </p>
      <Caution>{caution}</Caution>
    </div>
  );
}
