import type { Book } from "../../../shared/book/resolve.ts";
import type { Range } from "../../../shared/book/size/diameters.ts";
import type { RotorKind } from "../../../shared/book/size/families.ts";
import { usualRange, usualVoltage } from "../../../shared/book/size/usual.ts";
import type { WantedHold } from "../../../shared/decide/size/input.ts";
import type { Build } from "../../../shared/model/build.ts";
import type { Asked } from "./asked.ts";

/** What stands in the fields. */
export interface Settings {
  /** stored, or what a typed need comes to */
  readonly build: Build;
  readonly hold: WantedHold;
  /** of one cell at rest [V]; 0 where the pack's isn't known */
  readonly cellVoltage: number;
  /** whose strength the motor has, by identifier */
  readonly motor: string;
  readonly ranges: Readonly<Record<RotorKind, Range>>;
}

function rangeOf(book: Book, build: Build, kind: RotorKind, { from, to }: Asked["ranges"][RotorKind]): Range {
  const usual = usualRange(book, build, kind);
  return { from: from ?? usual.from, to: to ?? usual.to };
}

/** @returns what stands in the fields: as asked, else by the build */
export function settingsOf(book: Book, build: Build, asked: Asked): Settings {
  const { ranges } = asked;
  return {
    build,
    hold: { angle: asked.angle ?? "worst", margin: asked.margin ?? build.targetMargin, mode: "driving" },
    cellVoltage: asked.cellVoltage ?? usualVoltage(book, build),
    motor: asked.motor ?? build.motor,
    ranges: {
      ducted: rangeOf(book, build, "ducted", ranges.ducted),
      propeller: rangeOf(book, build, "propeller", ranges.propeller),
    },
  };
}
