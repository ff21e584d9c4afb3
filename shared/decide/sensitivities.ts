import type { Note } from "../physics/note.ts";
import type { AnyPredictInput } from "../physics/predictAny.ts";
import { formatFixed } from "../units/format.ts";
import { type Turnable, turnableInputs } from "./sensitivityInputs.ts";
import { pullBy, pullOfVariants, type Wanted, wantedMargin } from "./wanted.ts";

export interface Sensitivity {
  /** "skirt.gap"; "rotor.psi" for the whole curve */
  readonly path: string;
  /** SI; 1 for a curve */
  readonly value: number;
  /** % of margin per % of the input */
  readonly elasticity: number;
}

export interface Sensitivities {
  /** null where no pull is needed */
  readonly margin: number | null;
  /** largest first, whatever the sign; none where there is no margin */
  readonly sensitivities: readonly Sensitivity[];
  readonly warnings: readonly Note[];
}

/** Steps of ln x: the usual one, and one for places next to a turn of the margin. */
const STEPS = [1e-3, 1e-5] as const;
/** A smooth margin's two estimates differ by less, of order step². */
const SMOOTH = 1e-4;
/** A smooth margin's slopes on either side differ by less at the usual step, of order step. */
const ALIKE = 0.05;

interface Slope {
  readonly elasticity: number;
  /** slopes below and above where they differ: the margin turns here */
  readonly sides: readonly [number, number] | null;
}

/** Fourth-order difference from one side, for an input that stands at its most (Fornberg 1988, table 3); checked by the second-order one. */
function fromBelow(f: (t: number) => number, h: number): { elasticity: number; smooth: boolean } {
  const [f0, f1, f2, f3, f4] = [0, 1, 2, 3, 4].map((k) => f(-k * h));
  const second = (1.5 * f0 - 2 * f1 + 0.5 * f2) / h;
  const fourth = ((25 / 12) * f0 - 4 * f1 + 3 * f2 - (4 / 3) * f3 + (1 / 4) * f4) / h;
  return { elasticity: fourth, smooth: Math.abs(second - fourth) < SMOOTH };
}

function central(f: (t: number) => number, h: number): Slope {
  const [f0, plus, minus, plusTwo, minusTwo] = [0, h, -h, 2 * h, -2 * h].map(f);
  const [second, fourth] = [(plus - minus) / (2 * h), (8 * (plus - minus) - (plusTwo - minusTwo)) / (12 * h)];
  const [below, above] = [(f0 - minus) / h, (plus - f0) / h];
  const smooth = Math.abs(second - fourth) < SMOOTH && Math.abs(above - below) < ALIKE;
  return smooth ? { elasticity: fourth, sides: null } : { elasticity: second, sides: [below, above] };
}

function slopeOf(logMargin: (build: AnyPredictInput) => number, { times, mostFactor }: Turnable): Slope {
  const f = (t: number) => logMargin(times(Math.exp(t)));
  const [usual, fine] = STEPS;
  if (mostFactor < Math.exp(2 * usual)) {
    const below = fromBelow(f, usual);
    return { elasticity: (below.smooth ? below : fromBelow(f, fine)).elasticity, sides: null };
  }
  const slope = central(f, usual);
  return slope.sides ? central(f, fine) : slope;
}

function notesOf(told: readonly { input: Turnable; slope: Slope }[]): Note[] {
  const turned = told.flatMap(({ input, slope: { sides } }) =>
    sides ? [`${input.path} (${formatFixed(sides[0], 2)} below, ${formatFixed(sides[1], 2)} above)`] : [],
  );
  if (turned.length === 0) return [];
  const message = `Another mode takes over just here, so a step down and a step up differ: ${turned.join(", ")}.`;
  return [{ code: "margin-turns", message }];
}

function edgeNotes(edges: readonly Turnable[]): Note[] {
  if (edges.length === 0) return [];
  const message = `Left out, for the margin ends just beside them: ${edges.map(({ path }) => path).join(", ")}. Look at Ways to hold.`;
  return [{ code: "left-out-at-edge", message }];
}

function zeroNotes(zeros: readonly Turnable[]): Note[] {
  if (zeros.length === 0) return [];
  const message = `Left out, for a per cent of 0 is nothing: ${zeros.map(({ path }) => path).join(", ")}.`;
  return [{ code: "left-out-at-zero", message }];
}

const NO_PULL: Note = {
  code: "no-pull-needed",
  message: "No pull is needed on this attitude: there is no margin to move.",
};
const NOTHING_HELD: Note = {
  code: "nothing-held",
  message: "The margin is 0: nothing pulls, or no pull would do. See Ways to hold.",
};

/** Elasticities that differ by less are equal but for rounding, and stay in the order of the inputs [-]. */
const EQUAL = 1e-8;

/** @returns by which sensitivities are ranked: the size of each in steps of {@link EQUAL} [-] */
const rankOf = ({ elasticity }: { readonly elasticity: number }): number =>
  Math.round(Math.abs(elasticity) / EQUAL);

/**
 * How much each number of a build moves the margin on the wanted attitude.
 *
 *     ∂ ln m/∂ ln x ≈ [8(f₁ − f₋₁) − (f₂ − f₋₂)]/(12h),  f_k = ln m(x·e^{kh}),  h = 10⁻³
 *
 * @param build - of either kind, all SI [-]
 * @param wanted - attitude [°] and whether parked or driving
 * @returns margin [-]; per cent of margin per per cent of each input, largest first [-]; what was left out
 * @throws {OutOfRangeError} with the path of a number that can't be
 * @throws {NotEnoughDataError} where the build as it stands has no answer
 *
 * Valid for small changes, all else as it stands. Where the governing mode changes just here the mean of both sides is given, with a note.
 * Source: Abramowitz & Stegun, Handbook of Mathematical Functions, 25.3.21; docs/method/sensitivities.md
 */
export function sensitivitiesOf(build: AnyPredictInput, wanted: Wanted): Sensitivities {
  const pull = pullOfVariants(build);
  const marginOf = (each: AnyPredictInput) => wantedMargin(each.vehicle, pullBy(each, pull(each)), wanted);
  const margin = marginOf(build);
  if (margin === Number.POSITIVE_INFINITY) return { margin: null, sensitivities: [], warnings: [NO_PULL] };
  if (!(margin > 0)) return { margin, sensitivities: [], warnings: [NOTHING_HELD] };
  const inputs = turnableInputs(build);
  const all = inputs
    .filter(({ value }) => value !== 0)
    .map((input) => ({ input, slope: slopeOf((each) => Math.log(marginOf(each)), input) }));
  const told = all.filter(({ slope }) => Number.isFinite(slope.elasticity));
  const edges = all.filter(({ slope }) => !Number.isFinite(slope.elasticity)).map(({ input }) => input);
  return {
    margin,
    sensitivities: told
      .map(({ input: { path, value }, slope }) => ({ path, value, elasticity: slope.elasticity }))
      .sort((a, b) => rankOf(b) - rankOf(a)),
    warnings: [
      ...notesOf(told),
      ...edgeNotes(edges),
      ...zeroNotes(inputs.filter(({ value }) => value === 0)),
    ],
  };
}
