import { type Book, findById } from "../../../shared/book/book.ts";
import type { Resolved } from "../../../shared/book/resolve.ts";
import type { Build } from "../../../shared/model/build.ts";
import { formatFixed, formatQuantity, THIN_SPACE } from "../../../shared/units/format.ts";
import type { Outcome } from "../../state/outcome.ts";
import { gapText } from "../../ui/gapWords.ts";

/** A part of a build as the sheet names it. */
export interface PartRow {
  readonly what: string;
  readonly id: string;
  readonly name: string;
  /** the figures that count, as they are used */
  readonly figures: readonly string[];
}

function motorFigures({ motor }: Resolved): string[] {
  if (!motor) return [];
  const { kv, resistance } = motor.constants;
  const basis = motor.basis === "stated" ? ", by its maker" : ", measured";
  return [`${formatFixed(kv, 0)}${THIN_SPACE}rpm/V, ${formatQuantity(resistance, "resistance")}${basis}`];
}

function packFigures(book: Book, build: Build): string[] {
  const pack = findById(book.packs, build.pack)?.data;
  if (!pack) return [];
  const series = build.overrides.series ?? pack.series;
  const { capacity, minimumVoltage } = pack.cell;
  return [
    `${series} in series${pack.parallel > 1 ? `, ${pack.parallel} in parallel` : ""}`,
    `${formatQuantity(capacity * pack.parallel, "charge")}, not below ${formatQuantity(minimumVoltage, "voltage")} a cell`,
  ];
}

function skirtFigures(book: Book, { build, resolved }: Outcome): string[] {
  const skirt = findById(book.skirts, build.skirt ?? "")?.data;
  if (!skirt || !resolved) return [];
  const { value, uncertainty } = resolved.gap;
  return [
    `${formatQuantity(skirt.area, "area")} inside a lip of ${formatQuantity(skirt.perimeter, "length")}`,
    `gap ${gapText(value, uncertainty)}`,
  ];
}

function surfaceFigures({ resolved }: Outcome): string[] {
  const friction = resolved?.friction;
  if (!friction) return ["friction not known"];
  const spread = friction.uncertainty ? ` ± ${formatFixed(friction.uncertainty, 2)}` : "";
  return [`friction of the wheels ${formatFixed(friction.value, 2)}${spread}`];
}

function supplyFigures({ supply, charge }: Build): string[] {
  return [
    `throttle ${formatQuantity(supply.duty, "fraction")}, figures at ${formatQuantity(charge, "fraction")} charge`,
    ...(supply.auxCurrent > 0 ? [`${formatQuantity(supply.auxCurrent, "current")} for other loads`] : []),
  ];
}

function airFigures({ air }: Build): string[] {
  return [
    `${formatQuantity(air.temperature, "temperature")}, ${formatQuantity(air.pressure, "airPressure", { digits: 4 })}, ${formatQuantity(air.humidity, "fraction")} relative humidity`,
  ];
}

/** @returns what a build is made of and where it works, each with the figures that its verdict takes */
export function partRows(book: Book, outcome: Outcome): PartRow[] {
  const { build, resolved } = outcome;
  const row = (what: string, records: readonly { id: string; data: { name: string } }[], id: string | null) =>
    ({ what, id: id ?? "", name: records.find((each) => each.id === id)?.data.name ?? "none" }) as const;
  return [
    {
      ...row(resolved?.propeller ? "Propeller" : "Rotor", book.rotors, build.rotor),
      figures: [formatQuantity(build.diameter, "length")],
    },
    { ...row("Motor", book.motors, build.motor), figures: resolved ? motorFigures(resolved) : [] },
    { ...row("Pack", book.packs, build.pack), figures: packFigures(book, build) },
    { ...row("Skirt", book.skirts, build.skirt), figures: skirtFigures(book, outcome) },
    { ...row("Surface", book.surfaces, build.surface), figures: surfaceFigures(outcome) },
    ...(build.gear ? [{ ...row("Running gear", book.gears, build.gear), figures: [] }] : []),
    { what: "Supply", id: "", name: "", figures: supplyFigures(build) },
    { what: "Air", id: "", name: "", figures: airFigures(build) },
  ];
}
