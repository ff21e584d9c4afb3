import type { Compared, EstimateOff } from "../../shared/book/estimateOff.ts";
import { formatFixed } from "../../shared/units/format.ts";

const PERCENT = 100;
const DIGITS = 3;

const coefficient = (value: number) => formatFixed(value, DIGITS);

/** "12 % less pressure (ψ 0.62 against 0.70)" */
function against({ tested, estimated }: Compared, what: string, symbol: string): string {
  const figures = `(${symbol} ${coefficient(tested)} against ${coefficient(estimated)})`;
  if (!(estimated > 0)) return `more ${what} than the estimate, which had none there ${figures}`;
  const off = tested / estimated - 1;
  const percent = Math.round(Math.abs(off) * PERCENT);
  if (percent === 0) return `as much ${what} ${figures}`;
  return `${percent}\u202f% ${off < 0 ? "less" : "more"} ${what} ${figures}`;
}

function isWithin({ tested, estimated }: Compared, marked: number): boolean {
  return Math.abs(tested - estimated) <= marked * Math.abs(estimated);
}

/** @returns how far the estimate of a rotor that was then tested was off, in words and figures */
export function estimateSentence(name: string, off: EstimateOff): string {
  const { pressure, power, blocked, marked } = off;
  const said = [
    ...(pressure ? [`at best efficiency ${against(pressure, "pressure", "ψ")}`] : []),
    ...(power ? [`${against(power, "power", "λ")}`] : []),
    `with no flow ${against(blocked, "pressure", "ψ")}`,
  ];
  const all = [pressure, power, blocked].filter((each) => each !== null);
  const within = all.every((each) => isWithin(each, marked));
  const verdict = within ? "all within" : "not all within";
  return `Against the estimate from its geometry, the tested ${name} has ${said.join(", ")}: ${verdict} the ±\u202f${Math.round(marked * PERCENT)}\u202f% that an estimate is marked with.`;
}
