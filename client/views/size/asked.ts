import type { RotorKind } from "../../../shared/book/size/families.ts";
import type { DrawnRotor, TypedNeed } from "../../../shared/book/size/need/typedNeed.ts";
import { CELL_VOLTAGE } from "../../../shared/model/baseLimits.ts";
import { BUILD } from "../../../shared/model/limits.ts";
import { type Limits, withinLimits } from "../../../shared/units/limits.ts";
import { parseNumber } from "../../../shared/units/number.ts";
import { drawnFrom, drawnText, needEntries, needFrom } from "./need/address.ts";

/** The ends of the sizes as asked for [m]. */
export interface AskedRange {
  readonly from: number | null;
  readonly to: number | null;
}

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
  readonly ranges: Readonly<Record<RotorKind, AskedRange>>;
  /** looked at in the picture, by identifier */
  readonly family: string | null;
  /** in the build's place; null: the build's own */
  readonly need: TypedNeed | null;
  readonly drawn: readonly DrawnRotor[];
}

const MM = 1000;
const DIGITS = 6;
const short = (value: number): string => String(Number(value.toPrecision(DIGITS)));

function within(text: string | null, limits: Limits, unit = 1): number | null {
  const value = text === null ? null : parseNumber(text);
  return value === null ? null : withinLimits(value / unit, limits);
}

const millimetres = (value: number | null): string | null => (value === null ? null : short(value * MM));

/** @returns what an address asks; what can't be is left out */
export function askedFrom(query: URLSearchParams): Asked {
  const angle = query.get("on");
  const diameter = (key: string) => within(query.get(key), BUILD.diameter, MM);
  return {
    angle: angle === "worst" ? angle : within(angle, BUILD.attitudes.angle),
    margin: within(query.get("margin"), BUILD.targetMargin),
    cellVoltage: within(query.get("cell"), CELL_VOLTAGE),
    motor: query.get("motor"),
    ranges: {
      ducted: { from: diameter("from"), to: diameter("to") },
      propeller: { from: diameter("open-from"), to: diameter("open-to") },
    },
    family: query.get("family"),
    need: needFrom(query),
    drawn: drawnFrom(query.get("drawn")),
  };
}

/** @returns the address's query of what is asked */
export function askedQuery(asked: Asked): URLSearchParams {
  const { angle, margin, cellVoltage, motor, ranges, family, need, drawn } = asked;
  const entries: [string, string | null][] = [
    ["on", typeof angle === "number" ? short(angle) : angle],
    ["margin", margin === null ? null : short(margin)],
    ["cell", cellVoltage === null ? null : short(cellVoltage)],
    ["motor", motor],
    ["from", millimetres(ranges.ducted.from)],
    ["to", millimetres(ranges.ducted.to)],
    ["open-from", millimetres(ranges.propeller.from)],
    ["open-to", millimetres(ranges.propeller.to)],
    ["family", family],
    ...needEntries(need),
    ["drawn", drawnText(drawn)],
  ];
  return new URLSearchParams(
    entries.flatMap(([key, text]) => (text === null || text === "" ? [] : [[key, text]])),
  );
}
