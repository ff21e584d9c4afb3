import { type Book, findById } from "../../../../shared/book/book.ts";
import type { Missing } from "../../../../shared/book/missing.ts";
import {
  chordOf,
  propellerBasis,
  type ThrustPoint,
  thrustPoints,
} from "../../../../shared/book/propellerBasis.ts";
import { propellerBand } from "../../../../shared/fit/propellerBands.ts";
import type { PropellerFit } from "../../../../shared/fit/propellerFit.ts";
import type { StoredOf } from "../../../../shared/model/record.ts";
import { airFrom, DEFAULT_WEATHER } from "../../../../shared/physics/air.ts";
import { STANDARD_AIR_DENSITY } from "../../../../shared/physics/constants.ts";
import { propellerCoefficients, propellerUnits } from "../../../../shared/physics/fanlaws/propeller.ts";
import { RPM } from "../../../../shared/physics/motor.ts";
import { bladeReynolds } from "../../../../shared/physics/propellerLaw.ts";
import { testsOfPart } from "../address.ts";
import type { Source } from "../chosen.ts";

export type Which = "thrust" | "power";

export interface PropellerReading extends Source {
  readonly key: string;
  readonly test: number;
  readonly aside: string | null;
  readonly rpm: number;
  /** [m] */
  readonly diameter: number;
  readonly reynolds: number;
  /** C_T; C_P, null without shaft power */
  readonly thrust: number;
  readonly power: number | null;
  /** [N] */
  readonly force: number;
  /** reading less the fitted line [N]; null without a fit */
  readonly residual: number | null;
  /** the same over the line; null without a fit [-] */
  readonly off: number | null;
}

export interface PropellerPage {
  readonly rotor: StoredOf<"rotors">;
  readonly fit: PropellerFit | null;
  readonly missing: Missing | null;
  readonly chord: { readonly ratio: number; readonly assumed: boolean };
  readonly tests: readonly StoredOf<"tests">[];
  readonly readings: readonly PropellerReading[];
}

/** Re is taken in air of 20 °C, as the fit takes it. */
const { viscosity: VISCOSITY } = airFrom(DEFAULT_WEATHER);

function readingOf(
  point: ThrustPoint,
  page: Pick<PropellerPage, "fit" | "chord" | "tests">,
): PropellerReading {
  const { testId, row, rpm, diameter, thrust: force } = point;
  const density = point.density ?? STANDARD_AIR_DENSITY;
  const state = { diameter, speed: rpm * RPM, density };
  const found = propellerCoefficients({ thrust: force, shaftPower: point.shaftPower ?? null }, state);
  const blade = { diameter, chord: page.chord.ratio * diameter };
  const reynolds = bladeReynolds(blade, { density, viscosity: VISCOSITY }, state.speed);
  const line = page.fit && propellerBand(page.fit, "thrust", reynolds);
  const expected = line && line.value * propellerUnits(state).thrust;
  return {
    key: `${testId}#${row}`,
    testId,
    row,
    test: page.tests.findIndex((test) => test.id === testId),
    aside: point.setAside,
    rpm,
    diameter,
    reynolds,
    thrust: found.thrust,
    power: found.power,
    force,
    residual: expected === null ? null : force - expected,
    off: expected === null || expected === 0 ? null : force / expected - 1,
  };
}

/** @returns a propeller family, its coefficients and what they rest on; null where the book has no such rotor */
export function propellerPage(book: Book, id: string): PropellerPage | null {
  const rotor = findById(book.rotors, id);
  if (!rotor) return null;
  const answer = propellerBasis(book, id);
  const fit = answer.basis === "missing" ? null : answer.fit;
  const missing = answer.basis === "missing" ? answer.missing : answer.lacksPower;
  const tests = testsOfPart(book, "rotors", id).filter((test) => test.data.kind === "thrust");
  const page = { rotor, fit, missing, chord: chordOf(rotor), tests };
  return { ...page, readings: thrustPoints(book, id).map((point) => readingOf(point, page)) };
}

/** What one test brings to the coefficients. */
export interface ThrustContribution {
  readonly test: StoredOf<"tests">;
  readonly used: number;
  readonly aside: number;
  /** [m] */
  readonly diameter: number;
  readonly slowest: number;
  readonly fastest: number;
  /** mean distance of its thrusts from the line; null without a fit [-] */
  readonly off: number | null;
}

/** @returns what each test brings, in the order of their days; a test with every row set aside brings nothing */
export function thrustContributions({ tests, readings }: PropellerPage): ThrustContribution[] {
  return tests.map((test, index) => {
    const all = readings.filter((reading) => reading.test === index);
    const own = all.filter((reading) => reading.aside === null);
    const offs = own.flatMap(({ off }) => (off === null ? [] : [off]));
    const rpms = own.map((reading) => reading.rpm);
    return {
      test,
      used: own.length,
      aside: all.length - own.length,
      diameter: all[0]?.diameter ?? 0,
      slowest: Math.min(...rpms),
      fastest: Math.max(...rpms),
      off: offs.length > 0 ? offs.reduce((sum, off) => sum + off, 0) / offs.length : null,
    };
  });
}
