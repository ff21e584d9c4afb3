import { shareTitle, type UncertaintyPart } from "../../../shared/book/uncertainty/parts.ts";
import type { Spread } from "../../../shared/decide/uncertainty.ts";
import { rangeText, shareText, sureText } from "../uncertaintyWords.ts";
import { FigureOf } from "./FigureOf.tsx";

export interface SampledMarginProps {
  /** where the margin was sampled [°] */
  readonly angle: number;
  readonly state: "parked" | "driving";
  readonly spread: Spread;
  /** joint that it is over; none: beside any */
  readonly over?: string;
}

/** @returns the title of the working of a chance of holding */
export const chanceTitle = (of: Omit<SampledMarginProps, "spread">): string =>
  `chance of holding: ${whatOf(of)}`;

/** @returns the title of the working of a margin's range */
export const rangeTitle = (of: Omit<SampledMarginProps, "spread">): string => `5 to 95 % of ${whatOf(of)}`;

const sampledNow = async () => (await import("./sampled.ts")).sampledNow();

const whatOf = ({ angle, state, over }: Omit<SampledMarginProps, "spread">) =>
  `the margin at ${angle.toFixed(0)}°, ${state}${over ? `, over ${over}` : ""}`;

/** The chance that an attitude of the build on the screen holds, with its working. */
export function ChanceFigure(props: SampledMarginProps) {
  const { holds } = props.spread;
  return (
    <FigureOf board={sampledNow} title={chanceTitle(props)} value={holds}>
      {sureText(holds)}
    </FigureOf>
  );
}

/** The range that 90 % of the samples of a margin lie in, with its working; nothing where one of them needs no pull. */
export function RangeFigure(props: SampledMarginProps) {
  const { spread } = props;
  const range = rangeText(spread);
  if (!range || spread.p5 === null) return null;
  return (
    <FigureOf board={sampledNow} title={rangeTitle(props)} value={spread.p5}>
      {range}
    </FigureOf>
  );
}

/** A contribution to the uncertainty of the build on the screen, with its working. */
export function ShareFigure({ part: { what, share } }: { readonly part: UncertaintyPart }) {
  return (
    <FigureOf board={sampledNow} title={shareTitle(what)} value={share}>
      {shareText(share)}
    </FigureOf>
  );
}
