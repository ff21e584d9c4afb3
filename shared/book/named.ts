import type { InstrumentPart } from "../model/parts/instrument.ts";
import type { PlatePart } from "../model/parts/plate.ts";
import type { StoredOf } from "../model/record.ts";
import type { Instrument, Plate } from "../model/tests/common.ts";
import type { BenchTest, InlinedTest } from "../model/tests/index.ts";
import { dimension } from "../units/dimensions.ts";
import { toSI } from "../units/quantity.ts";

/** Where a test's instruments and plate are looked up. */
export interface NamedParts {
  readonly instruments: readonly StoredOf<"instruments">[];
  readonly plates: readonly StoredOf<"plates">[];
}

/** A reading lies anywhere in the step that is shown: a rectangle of that width has the standard deviation 1/√12. JCGM 100:2008, F.2.2.1. */
const STEP = 1 / Math.sqrt(12);

/**
 * An instrument of the book as a test could have described it.
 *
 *     fixed part √(absolute² + resolution²/12)
 *
 * @param part - as stored
 * @returns per cent of the reading [%] and fixed part [SI of what it measures]
 *
 * Source: JCGM 100:2008 (GUM), F.2.2.1, resolution of an indication
 */
export function asInstrument({ measures, percent, absolute, resolution }: InstrumentPart): Instrument {
  const own = absolute ? toSI(absolute, measures) : 0;
  const step = resolution ? toSI(resolution, measures) * STEP : 0;
  const fixed = Math.hypot(own, step);
  return {
    ...(percent === undefined ? {} : { percent }),
    ...(fixed > 0 ? { absolute: { value: fixed, unit: dimension(measures).si } } : {}),
  };
}

/** Digits in which a stored length comes back as it was typed. */
const DIGITS = 12;

const inMillimetres = (metres: number) => ({ value: Number((metres * 1e3).toPrecision(DIGITS)), unit: "mm" });

/** @returns a plate of the book as a test could have described it, lengths in mm */
export function asPlate({ thickness, holes, dischargeCoefficient }: PlatePart): Plate {
  return {
    holes: holes.map(({ diameter, count, edge }) => ({
      diameter: inMillimetres(diameter),
      thickness: inMillimetres(thickness),
      count,
      edge,
      ...(dischargeCoefficient === undefined ? {} : { dischargeCoefficient }),
    })),
  };
}

type Said<T> = T | string | undefined;

function plateOf({ plates }: NamedParts, said: Said<Plate>): Plate | undefined {
  if (typeof said !== "string") return said;
  const part = plates.find(({ id }) => id === said);
  return part ? asPlate(part.data) : undefined;
}

function instrumentsOf({ instruments }: NamedParts, said: Readonly<Record<string, Said<Instrument>>>) {
  return Object.fromEntries(
    Object.entries(said).flatMap(([key, one]) => {
      const part = instruments.find(({ id }) => id === one);
      if (part) return [[key, asInstrument(part.data)]];
      return typeof one === "string" ? [] : [[key, one]];
    }),
  );
}

const namesNone = (test: BenchTest): test is InlinedTest =>
  !("plate" in test && typeof test.plate === "string") &&
  Object.values(test.instruments).every((one) => typeof one !== "string");

/** @returns a test with the instruments and the plate that it names described in their place; the same test where it names none */
export function inlined(parts: NamedParts, test: BenchTest): InlinedTest {
  if (namesNone(test)) return test;
  const instruments = instrumentsOf(parts, test.instruments);
  const described = "plate" in test ? { plate: plateOf(parts, test.plate) } : {};
  return { ...test, ...described, instruments } as InlinedTest;
}
