import { BUILD, CELL_VOLTAGE } from "../../../shared/model/limits.ts";
import { type Limits, withinLimits } from "../../../shared/units/limits.ts";
import { parseNumber } from "../../../shared/units/number.ts";

/** What this view is asked, as the address carries it; null where nothing was asked. */
export interface Asked {
  /** θ [°] */
  readonly angle: number | "worst" | null;
  /** [-] */
  readonly margin: number | null;
  /** of one cell at rest [V] */
  readonly cellVoltage: number | null;
  /** whose strength the motor has, by identifier */
  readonly motor: string | null;
  /** [m] */
  readonly from: number | null;
  readonly to: number | null;
  /** looked at in the picture, by identifier */
  readonly family: string | null;
}

const MM = 1000;
const DIGITS = 6;
const short = (value: number): string => String(Number(value.toPrecision(DIGITS)));

function within(text: string | null, limits: Limits, unit = 1): number | null {
  const value = text === null ? null : parseNumber(text);
  return value === null ? null : withinLimits(value / unit, limits);
}

/** @returns what an address asks; what can't be is left out */
export function askedFrom(query: URLSearchParams): Asked {
  const angle = query.get("on");
  return {
    angle: angle === "worst" ? angle : within(angle, BUILD.attitudes.angle),
    margin: within(query.get("margin"), BUILD.targetMargin),
    cellVoltage: within(query.get("cell"), CELL_VOLTAGE),
    motor: query.get("motor"),
    from: within(query.get("from"), BUILD.diameter, MM),
    to: within(query.get("to"), BUILD.diameter, MM),
    family: query.get("family"),
  };
}

/** @returns the address's query of what is asked */
export function askedQuery({ angle, margin, cellVoltage, motor, from, to, family }: Asked): URLSearchParams {
  const entries: [string, string | null][] = [
    ["on", typeof angle === "number" ? short(angle) : angle],
    ["margin", margin === null ? null : short(margin)],
    ["cell", cellVoltage === null ? null : short(cellVoltage)],
    ["motor", motor],
    ["from", from === null ? null : short(from * MM)],
    ["to", to === null ? null : short(to * MM)],
    ["family", family],
  ];
  return new URLSearchParams(
    entries.flatMap(([key, text]) => (text === null || text === "" ? [] : [[key, text]])),
  );
}
