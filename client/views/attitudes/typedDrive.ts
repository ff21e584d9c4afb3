import type { Drive } from "../../../shared/physics/hold/drive.ts";
import { isGood, type NumberSpec, readNumber } from "../../../shared/units/readNumber.ts";

export interface DriveEntry extends NumberSpec {
  readonly key: "diameter" | "motors" | "ratio" | "efficiency" | "stall";
  /** what it is called, without its unit */
  readonly label: string;
}

type Key = DriveEntry["key"];

/** What stands in the fields. */
export type DriveTexts = Readonly<Partial<Record<Key, string>>>;

const above0 = (max: number) => ({ positive: true, max }) as const;

/** A drive is kept nowhere: these limits only keep out nonsense. */
export const DRIVE_ENTRIES: readonly DriveEntry[] = [
  { key: "diameter", label: "Wheel diameter", dimension: "length", limits: above0(2), example: "32 mm" },
  {
    key: "motors",
    label: "Drive motors",
    dimension: null,
    limits: { min: 1, max: 16, whole: true },
    example: "2",
  },
  {
    key: "ratio",
    label: "Gear ratio, motor turns a wheel turn",
    dimension: null,
    limits: above0(1e4),
    example: "50",
  },
  { key: "efficiency", label: "Gear efficiency", dimension: "fraction", limits: above0(1), example: "60 %" },
  {
    key: "stall",
    label: "Stall torque of one motor",
    dimension: "torque",
    limits: above0(100),
    example: "4 mN·m",
  },
];

export interface TypedDrive {
  /** null until every field can be read */
  readonly drive: Drive | null;
  /** stall torque of one motor [N·m] */
  readonly stall: number;
  /** what is wrong, by field; an empty one isn't */
  readonly problems: ReadonlyMap<Key, string>;
  /** what isn't known yet, as a list says it */
  readonly missing: readonly string[];
}

/** @returns what the fields say of the drive, and what is missing */
export function readDrive(texts: DriveTexts): TypedDrive {
  const values = new Map<Key, number>();
  const problems = new Map<Key, string>();
  for (const entry of DRIVE_ENTRIES) {
    const text = texts[entry.key]?.trim() ?? "";
    const reading = readNumber(entry, text);
    if (isGood(reading)) values.set(entry.key, reading.value);
    else if (text !== "") problems.set(entry.key, reading.message);
  }
  const missing = DRIVE_ENTRIES.filter(({ key }) => !values.has(key));
  const value = (key: Key) => values.get(key) ?? Number.NaN;
  const drive = {
    wheelRadius: value("diameter") / 2,
    motors: value("motors"),
    gearRatio: value("ratio"),
    gearEfficiency: value("efficiency"),
  };
  return {
    drive: missing.length > 0 ? null : drive,
    stall: value("stall"),
    problems,
    missing: missing.map(({ label }) => label.split(",")[0].toLowerCase()),
  };
}
