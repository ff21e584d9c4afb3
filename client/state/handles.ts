import type { Exchange } from "../../shared/book/mass/exchange.ts";
import type { Build } from "../../shared/model/build.ts";
import { BUILD, LEAST_TRIED_DIAMETER, LEAST_TRIED_DUTY } from "../../shared/model/limits.ts";
import { type Limits, withinLimits } from "../../shared/units/limits.ts";
import type { NumberSpec } from "../../shared/units/readNumber.ts";

export const HANDLE_KEYS = [
  "diameter",
  "series",
  "charge",
  "duty",
  "gap",
  "mass",
  "wheelFriction",
  "temperature",
  "pressure",
] as const;
export type HandleKey = (typeof HANDLE_KEYS)[number];

/** What is tried against the build as it stands, SI; a key that is not there is untouched. */
export interface Changes extends Readonly<Partial<Record<HandleKey, number>>> {
  /** parts of the book in the place of its own; left out where there are none */
  readonly parts?: Exchange;
}

/** Values as they stand without a change, SI. */
export type Settings = Readonly<Record<HandleKey, number>>;

export interface Handle extends NumberSpec {
  readonly key: HandleKey;
  readonly label: string;
  /** digits of the number in its quantity's first unit; the slider's steps are one of the last */
  readonly decimals: number;
  /** what the model takes, SI */
  readonly limits: Limits & { readonly min: number; readonly max: number };
  /** where the slider runs for a build that stands at `was`, SI */
  readonly slide: (was: number) => readonly [number, number];
  readonly put: (build: Build, value: number) => Build;
}

const MM = 1e-3;
const GRAM = 1e-3;
const CELSIUS = 273.15;

const withOverride = (build: Build, change: Partial<Build["overrides"]>): Build => ({
  ...build,
  overrides: { ...build.overrides, ...change },
});

/** A slider needs an end above 0 [kg]. */
const LEAST_TRIED_MASS = 0.1 * GRAM;

/** The limits are those of the model's schemas, with an end above 0; a value in them may still be odd, and the prediction then says so. */
export const HANDLES: readonly Handle[] = [
  {
    key: "diameter",
    label: "Rotor diameter",
    dimension: "length",
    decimals: 1,
    limits: { min: LEAST_TRIED_DIAMETER, max: BUILD.diameter.max },
    slide: (was) => [0.5 * was, 1.6 * was],
    put: (build, diameter) => ({ ...build, diameter }),
  },
  {
    key: "series",
    label: "Cells in series",
    dimension: null,
    decimals: 0,
    limits: BUILD.overrides.series,
    slide: (was) => [1, Math.max(6, was)],
    put: (build, series) => withOverride(build, { series }),
  },
  {
    key: "charge",
    label: "Charge",
    dimension: "fraction",
    decimals: 0,
    limits: BUILD.charge,
    slide: () => [0, 1],
    put: (build, charge) => ({ ...build, charge }),
  },
  {
    key: "duty",
    label: "Throttle",
    dimension: "fraction",
    decimals: 0,
    limits: { ...BUILD.supply.duty, min: LEAST_TRIED_DUTY },
    slide: () => [0.01, 1],
    put: (build, duty) => ({ ...build, supply: { ...build.supply, duty } }),
  },
  {
    key: "gap",
    label: "Gap",
    dimension: "length",
    decimals: 2,
    limits: BUILD.overrides.gap,
    slide: (was) => [0, Math.max(2 * MM, 2 * was)],
    put: (build, gap) => withOverride(build, { gap }),
  },
  {
    key: "mass",
    label: "Mass",
    dimension: "mass",
    decimals: 0,
    limits: { min: LEAST_TRIED_MASS, max: BUILD.vehicle.mass.max },
    slide: (was) => [0.3 * was, 2.5 * was],
    put: (build, mass) => ({ ...build, vehicle: { ...build.vehicle, mass } }),
  },
  {
    key: "wheelFriction",
    label: "Wheel friction μ",
    dimension: null,
    decimals: 2,
    limits: BUILD.overrides.wheelFriction,
    slide: (was) => [0.05, Math.max(1.5, was)],
    put: (build, wheelFriction) => withOverride(build, { wheelFriction }),
  },
  {
    key: "temperature",
    label: "Air temperature",
    dimension: "temperature",
    decimals: 0,
    limits: BUILD.air.temperature,
    slide: () => [CELSIUS - 10, CELSIUS + 45],
    put: (build, temperature) => ({ ...build, air: { ...build.air, temperature } }),
  },
  {
    key: "pressure",
    label: "Air pressure",
    dimension: "airPressure",
    decimals: 0,
    limits: BUILD.air.pressure,
    slide: () => [70e3, 106e3],
    put: (build, pressure) => ({ ...build, air: { ...build.air, pressure } }),
  },
];

/** @returns the build with every change put into it */
export function withChanges(build: Build, changes: Changes): Build {
  return HANDLES.reduce((changed, handle) => {
    const value = changes[handle.key];
    return value === undefined ? changed : handle.put(changed, value);
  }, build);
}

/** @returns the changes with one more, or without it where the value is as it was */
export function changed(changes: Changes, key: HandleKey, value: number, was: number): Changes {
  const { [key]: _before, ...rest } = changes;
  const tiny = 1e-9 * Math.max(Math.abs(was), 1e-6);
  return Math.abs(value - was) <= tiny ? rest : { ...rest, [key]: value };
}

/** @returns settings as an address carries them, SI; with parts: `triedToQuery` */
export function changesToQuery(changes: Changes): Record<string, string> {
  return Object.fromEntries(
    HANDLE_KEYS.flatMap((key) => (changes[key] === undefined ? [] : [[key, String(changes[key])]])),
  );
}

/** @returns the number that an address carries for a handle, SI; null where it is none within its limits */
function numberIn({ limits }: Handle, text: string): number | null {
  return withinLimits(text.trim() === "" ? Number.NaN : Number(text), limits);
}

/** @returns the changes that an address carries; what is no number within its limits is left out, see {@link leftOutOf} */
export function changesFromQuery(query: URLSearchParams): Changes {
  const found = HANDLES.flatMap((handle) => {
    const value = numberIn(handle, query.get(handle.key) ?? "");
    return value === null ? [] : [[handle.key, value] as const];
  });
  return Object.fromEntries(found);
}

/** What an address asks of a handle that can't be. */
export interface LeftOut {
  readonly handle: Handle;
  /** as the address has it, SI */
  readonly text: string;
}

/** @returns what {@link changesFromQuery} leaves out of an address */
export function leftOutOf(query: URLSearchParams): LeftOut[] {
  return HANDLES.flatMap((handle) => {
    const text = query.get(handle.key);
    return text === null || numberIn(handle, text) !== null ? [] : [{ handle, text }];
  });
}
