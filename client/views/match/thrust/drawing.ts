import type { Quantiles } from "../../../../shared/decide/uncertainty.ts";
import type { ThrustPicture } from "./picture.ts";

/** Another build whose thrust is laid over. */
export interface ThrustOverlay {
  readonly id: string;
  readonly name: string;
  readonly letter: string;
  readonly dash: string;
  readonly picture: ThrustPicture;
}

/** What the chart of press force against speed shows. */
export interface ThrustDrawing {
  readonly picture: ThrustPicture;
  /** the build as it stands, while something is tried */
  readonly ghost: ThrustPicture | null;
  readonly overlays: readonly ThrustOverlay[];
  /** direct label of the curve: the propeller, its size */
  readonly label: readonly [string, string];
  /** of the press force [N]; null while nothing is sampled */
  readonly spread: Quantiles | null;
  /** index of the reading that is pointed at */
  readonly picked: number | null;
  readonly duration: number;
}
