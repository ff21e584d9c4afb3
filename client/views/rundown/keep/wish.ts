import { keepForMargin } from "../../../../shared/decide/size/keep.ts";
import { BUILD, KEPT_SUCTION, KEPT_THRUST } from "../../../../shared/model/limits.ts";
import type { Keep } from "../../../../shared/physics/rundown/input.ts";
import type { RundownInput } from "../../../../shared/physics/rundown.ts";
import { withinLimits } from "../../../../shared/units/limits.ts";
import { parseNumber } from "../../../../shared/units/number.ts";

/** What a controller is to keep: a suction, a propeller's thrust, or a margin on an attitude while it drives. */
export type Wish =
  | { readonly kind: "suction"; readonly pressure: number }
  | { readonly kind: "thrust"; readonly thrust: number }
  | { readonly kind: "margin"; readonly margin: number; readonly angle: number | "worst" };

const DIGITS = 6;
const short = (value: number): string => String(Number(value.toPrecision(DIGITS)));

const NEWTON = "N";

/** @returns a wish as the address writes it: "1200" pascals, "2.5N", "1.5@153", "1.5@worst" */
export function wishText(wish: Wish): string {
  if (wish.kind === "thrust") return `${short(wish.thrust)}${NEWTON}`;
  if (wish.kind === "suction") return short(wish.pressure);
  return `${short(wish.margin)}@${wish.angle === "worst" ? "worst" : short(wish.angle)}`;
}

/** @returns the wish that an address writes; null where it writes none that can be read */
export function wishFrom(text: string | null): Wish | null {
  if (text === null || text === "") return null;
  if (text.endsWith(NEWTON)) {
    const typed = parseNumber(text.slice(0, -NEWTON.length));
    const thrust = typed === null ? null : withinLimits(typed, KEPT_THRUST);
    return thrust === null ? null : { kind: "thrust", thrust };
  }
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

/** @returns what a wish comes to on a build: a suction [Pa], a propeller's thrust [N]; null where the wish is of the other kind of rotor @throws {OutOfRangeError} where nothing gives that margin */
export function keepFor(build: RundownInput, wish: Wish): Keep | null {
  const isOpen = "thrust" in build.rotor;
  if (wish.kind === "suction") return isOpen ? null : { pressure: wish.pressure };
  if (wish.kind === "thrust") return isOpen ? { thrust: wish.thrust } : null;
  const { margin, angle } = wish;
  return keepForMargin(build, { angle, margin, mode: "driving" });
}
