import { type Book, findById } from "#shared/book/book.ts";
import { resolveBuild } from "#shared/book/resolve.ts";
import { airFrom } from "#shared/physics/air.ts";
import { type PredictInput, type Prediction, predict } from "#shared/physics/predict.ts";

/** Something that the model doesn't count, and how large it is on a build of the demo. */
export interface LeftOut {
  readonly what: string;
  /** of what, in words */
  readonly of: string;
  /** relative [-] */
  readonly size: number;
  readonly how: string;
}

const BUILD = "pane-crawler";

interface Case {
  readonly input: PredictInput;
  readonly prediction: Prediction;
  readonly pressure: number;
  readonly flow: number;
  readonly speed: number;
}

function demoCase(book: Book): Case {
  const build = findById(book.builds, BUILD)?.data;
  const resolved = build && resolveBuild(book, build);
  if (!resolved?.input) throw new Error(`the demo's ${BUILD} has no numbers`);
  const prediction = predict(resolved.input);
  const { point } = prediction;
  if (!point) throw new Error(`the demo's ${BUILD} doesn't turn`);
  const { pressure, flow, speed } = point;
  return { input: resolved.input, prediction, pressure, flow, speed };
}

/** The rotor breathes the cavity's thinner air. */
function cavityAir({ input, pressure }: Case): LeftOut {
  return {
    what: "density of the air in the cavity",
    of: `suction, at ${(pressure / 1000).toFixed(1)} kPa`,
    size: -pressure / input.air.pressure,
    how: "ρ falls with the pressure: −Δp/p",
  };
}

/** Apparent f·Re of flow that still develops between plates, 96 where it has [-]: Shah & London (1978), from memory. */
function apparentFriction(x: number): number {
  const thin = 3.44 / Math.sqrt(x);
  return 4 * (thin + (0.674 / (4 * x) + 24 - thin) / (1 + 2.9e-5 / x ** 2));
}

/** f·Re as the lip's law has it: plane Poiseuille, Blasius beyond their crossing [-]. */
const lawFriction = (reynolds: number): number => Math.max(96, 0.3164 * reynolds ** 0.75);

/** A lip so short that the flow under it never settles. */
function developing({ input, prediction, flow }: Case): LeftOut {
  const { perimeter, gap, roughness, land } = input.skirt;
  const { density, viscosity } = airFrom(input.air);
  const height = gap + roughness;
  const reynolds = (density * (flow / (perimeter * height)) * 2 * height) / viscosity;
  const factor = apparentFriction(land / (2 * height * reynolds)) / lawFriction(reynolds);
  const { suction } = predict({ ...input, skirt: { ...input.skirt, landFriction: factor } });
  return {
    what: "flow that still develops under a short lip",
    of: `pull, lip ${(1000 * land).toFixed(0)} mm wide, gap ${(1000 * height).toFixed(2)} mm, Re ${reynolds.toFixed(0)}`,
    size: suction / prediction.suction - 1,
    how: `friction along it ${factor.toFixed(1)} × that of the law (Shah & London 1978, from memory), its entry losses counted as well; a leak test measures it`,
  };
}

/** A blade as it is usually printed, and its stiffness. Common practice, no source. */
const BLADE = { thickness: 1e-3, modulus: 2.5e9 };

/** Blades that stand swept are bent outwards by their own weight in the spin. */
function bending(book: Book, { input, speed }: Case): LeftOut {
  const build = findById(book.builds, BUILD)?.data;
  const rotor = findById(book.rotors, build?.rotor)?.data;
  const { bladeExitAngle = 90, widthRatio = 0.1 } = rotor?.geometry ?? {};
  const { density = 1240 } = rotor?.material ?? {};
  const length = widthRatio * input.rotor.diameter;
  const across = Math.cos((bladeExitAngle * Math.PI) / 180);
  const load = density * BLADE.thickness * speed ** 2 * (input.rotor.diameter / 2) * across;
  const tip = (load * length ** 4) / (8 * BLADE.modulus * (BLADE.thickness ** 3 / 12));
  return {
    what: "blades that bend",
    of: `blade's height, at ${((speed * 30) / Math.PI / 1000).toFixed(0)} 000 rpm`,
    size: tip / length,
    how: "tip of a blade 1 mm thick and as high as the rotor's exit is wide, held at the disc alone, 2.5 GPa: q·L⁴/(8·E·I); what a curve test saw at that speed is in its readings",
  };
}

/** Wheels that turn on the spot slide across. */
function turning({ input }: Case): LeftOut {
  const { wheelbase, track } = input.vehicle;
  return {
    what: "grip that turning on the spot takes",
    of: "margin against slipping while it turns",
    size: track / Math.hypot(wheelbase, track) - 1,
    how: "wheels at the corners slide across by wheelbase over diagonal; no source",
  };
}

/** @returns what the model leaves out, sized on the demo's Pane crawler */
export function leftOut(book: Book): LeftOut[] {
  const of = demoCase(book);
  return [cavityAir(of), developing(of), bending(book, of), turning(of)];
}
