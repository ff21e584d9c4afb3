import type { Spread } from "../../shared/decide/uncertainty.ts";
import { Term } from "./Term.tsx";
import { ChanceFigure, RangeFigure } from "./working/SampledFigure.tsx";

interface SureProps {
  /** where it was sampled [°] */
  readonly angle: number;
  readonly state: "parked" | "driving";
  /** null: not known */
  readonly spread: Spread | null;
}

/** An attitude's chance of holding, and the range of its margin, each with its working; nothing where it isn't known. */
export function Sure({ spread, ...at }: SureProps) {
  if (!spread) return null;
  return (
    <small class="sure">
      {spread.p5 !== null && spread.p95 !== null && (
        <>
          <RangeFigure {...at} spread={spread} />,{" "}
        </>
      )}
      <span class="whole">
        <Term of="chance of holding">chance</Term> <ChanceFigure {...at} spread={spread} />
      </span>
    </small>
  );
}
