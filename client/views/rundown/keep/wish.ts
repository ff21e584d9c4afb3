import { dutyOf } from "../../../../shared/decide/size/duty.ts";
import { pullForHold } from "../../../../shared/decide/size/need.ts";
import { BUILD, KEPT_SUCTION } from "../../../../shared/model/limits.ts";
import { OutOfRangeError } from "../../../../shared/numeric/errors.ts";
import type { RundownInput } from "../../../../shared/physics/rundown.ts";
import { withinLimits } from "../../../../shared/units/limits.ts";
import { parseNumber } from "../../../../shared/units/number.ts";

/** What a controller is to keep: a suction, or a margin on an attitude while it drives. */
export type Wish =
  | { readonly kind: "suction"; readonly pressure: number }
  | { readonly kind: "margin"; readonly margin: number; readonly angle: number | "worst" };

const DIGITS = 6;
const short = (value: number): string => String(Number(value.toPrecision(DIGITS)));

/** @returns a wish as the address writes it: "1200" pascals, "1.5@153", "1.5@worst" */
export function wishText(wish: Wish): string {
  if (wish.kind === "suction") return short(wish.pressure);
  return `${short(wish.margin)}@${wish.angle === "worst" ? "worst" : short(wish.angle)}`;
}

/** @returns the wish that an address writes; null where it writes none that can be read */
export function wishFrom(text: string | null): Wish | null {
  if (text === null || text === "") return null;
  const [amountText, angleText] = text.split("@");
  const amount = parseNumber(amountText);
  if (amount === null) return null;
  if (angleText === undefined) {
    const pressure = withinLimits(amount, KEPT_SUCTION);
    return pressure === null ? null : { kind: "suction", pressure };
  }
  const margin = withinLimits(amount, BUILD.targetMargin);
  const typed = angleText === "worst" ? null : parseNumber(angleText);
  const angle =
    angleText === "worst" ? "worst" : typed === null ? null : withinLimits(typed, BUILD.attitudes.angle);
  return margin === null || angle === null ? null : { kind: "margin", margin, angle };
}

/** @returns the suction that a wish comes to on a build [Pa] @throws {OutOfRangeError} where no suction gives that margin */
export function suctionFor({ vehicle, skirt, air }: RundownInput, wish: Wish): number {
  if (wish.kind === "suction") return wish.pressure;
  if (!skirt) throw new OutOfRangeError("skirt", Number.NaN, "a skirt: an open propeller keeps no suction");
  const { margin, angle } = wish;
  const pull = pullForHold(vehicle, { angle, margin, mode: "driving" });
  return dutyOf({ vehicle, air }, skirt, pull).pressure;
}
