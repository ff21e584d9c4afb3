import type { StoredOf } from "../../../shared/model/record.ts";
import type { BenchTest } from "../../../shared/model/tests/index.ts";
import { asRead } from "../../../shared/units/decimalMark.ts";

/** The parts of a row that carry a number and its unit, as they were typed. */
const LABELS: Readonly<Record<string, string>> = {
  speed: "speed",
  thrust: "thrust",
  pressure: "pressure",
  flow: "flow",
  platePressure: "plate's drop",
  voltage: "voltage",
  current: "current",
  torque: "torque",
  density: "density",
  throttle: "throttle",
  charge: "drawn",
  time: "time",
  held: "held",
  letGo: "let go",
  slid: "slid",
  gap: "gap",
  load: "load",
  height: "height",
  reading: "reading",
  angle: "inclination",
};

export interface Typed {
  readonly label: string;
  readonly text: string;
}

interface Quantity {
  readonly value: number;
  readonly unit: string;
}

const isQuantity = (value: unknown): value is Quantity =>
  typeof value === "object" && value !== null && "value" in value && "unit" in value;

/** @returns a quantity as it was typed, with the reader's decimal mark */
export function typedText({ value, unit }: Quantity): string {
  const number = asRead(String(value));
  return unit === "" || unit === "1" ? number : `${number} ${unit}`;
}

/** @returns what a row says in its own words: every quantity as typed, holes that were open, what let go or did not */
export function typedRow(test: BenchTest, row: number): Typed[] {
  const said: Record<string, unknown> = test.rows[row] ?? {};
  const quantities = Object.entries(LABELS).flatMap(([key, label]) => {
    const value = said[key];
    if (isQuantity(value)) return [{ label, text: typedText(value) }];
    if (value === null && (key === "letGo" || key === "slid")) return [{ label, text: "stopped before" }];
    return [];
  });
  const open = said.open;
  const holes = Array.isArray(open) ? [{ label: "holes open", text: open.join(" + ") }] : [];
  const free = said.noLoad === true ? [{ label: "shaft", text: "no load" }] : [];
  return [...quantities, ...holes, ...free];
}

const KIND_WORD = {
  curve: "Curve test",
  pull: "Pull test",
  motor: "Motor test",
  leak: "Leak test",
  friction: "Friction test",
  thrust: "Thrust test",
  discharge: "Discharge test",
  "ride-height": "Ride-height test",
  "weigh-in": "Weigh-in",
  "run-log": "Run log",
} as const;

/** @returns the test's title, or its kind and day where it has none */
export function testName(test: StoredOf<"tests">): string {
  const { title, kind, date } = test.data;
  return title === "" ? `${KIND_WORD[kind]} of ${date}` : title;
}
