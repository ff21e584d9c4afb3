import { burstSpeed, rotorStress } from "../../physics/limits/disc.ts";
import { windingResistance } from "../../physics/winding.ts";
import { explain, type Told, type Working, workedOut } from "../../physics/working.ts";
import type { BladeShape, LimitsInput } from "./input.ts";
import type { Limits } from "./limits.ts";
import { bendingOf, burstSpeedOf, discOf, rimOf } from "./rotor.ts";

/** @returns working of the temperature at which a winding settles under a current; null where R_th is not known */
export function windingWorking(
  { build }: Pick<LimitsInput, "build">,
  current: number,
  temperature: number,
): Working | null {
  const { thermalResistance, resistance } = build.motor;
  if (thermalResistance === null) return null;
  return explain(
    {
      title: "settled temperature of the winding",
      equation: "T = T_a + R_th·I²·R₂₀·[1 + 0.00393(T − 293.15)]",
      inputs: {
        ambient: ["T_a", "temperature of the air", "K"],
        thermal: ["R_th", "thermal resistance, winding to air", "K/W"],
        current: ["I", "current at the operating point, the winding settled", "A"],
        resistance20: ["R₂₀", "resistance at 20 °C", "Ω"],
        settled: ["T", "temperature put in, which the solver found", "K"],
      },
      output: ["T", "K"],
      source: "heat balance in steady state; IEC 60028 for copper; docs/method/limits.md",
      evaluate: ({ ambient, thermal, current: i, resistance20, settled }) =>
        ambient + thermal * i ** 2 * windingResistance(resistance20, settled),
    },
    {
      ambient: build.air.temperature,
      thermal: thermalResistance,
      current,
      resistance20: resistance,
      settled: temperature,
    },
  );
}

const DISC_INPUTS = {
  diameter: ["D", "rotor diameter, r_o = D/2", "m"],
  bore: ["2r_i", "bore", "m"],
  density: ["ρ_m", "density of the material", "kg/m³"],
  poisson: ["ν", "Poisson's ratio", ""],
  bladeMass: ["m_b", "all blades together", "kg"],
  bladeRadius: ["r_b", "where the blades' mass is", "m"],
  rimThickness: ["t", "disc at its rim", "m"],
} as const;
const LARGEST = "largest stress of the rotor";
const DISC_SOURCE = "Timoshenko & Goodier, Theory of Elasticity, art. 28 and 32; docs/method/limits.md";

type DiscNumbers = Readonly<Record<keyof typeof DISC_INPUTS, number>>;

const bodyOf = ({ diameter, bore, density, poisson, bladeMass, bladeRadius, rimThickness }: DiscNumbers) => {
  const blades = bladeMass > 0 ? { mass: bladeMass, radius: bladeRadius, rimThickness, count: null } : null;
  const rotor = { density, poisson, strength: 1, boreDiameter: bore, blades };
  return { disc: discOf(rotor, diameter), rim: rimOf(rotor) };
};

const MATERIAL = ["strength", "across printed layers", "Pa", "stress"] as const;
const SPEED = ["ω", "speed", "rad/s"] as const;
const BURSTS = {
  title: "speed at which it bursts",
  output: ["ω_burst", "rad/s"],
  source: `${DISC_SOURCE}; the safety factor of 2 on speed is common practice, no source`,
} as const;

type Body = NonNullable<LimitsInput["rotor"]>;

const numbersOf = (rotor: Body, diameter: number): DiscNumbers => ({
  diameter,
  bore: rotor.boreDiameter,
  density: rotor.density,
  poisson: rotor.poisson,
  bladeMass: rotor.blades?.mass ?? 0,
  bladeRadius: rotor.blades?.radius ?? 0,
  rimThickness: rotor.blades?.rimThickness ?? 0,
});

/** Of disc and blades as a load on its rim. */
function discWorking(told: Pick<Told, "title" | "output">, numbers: DiscNumbers, speed: number): Working {
  const [symbol] = told.output;
  return explain(
    {
      ...told,
      equation: `${symbol} = (ρ_m·ω²/4)[(3 + ν)r_o² + (1 − ν)r_i²] + 2q·r_o²/(r_o² − r_i²),  q = m_b·ω²·r_b/(2π·r_o·t);  no bore: half of both`,
      inputs: { ...DISC_INPUTS, speed: SPEED },
      source: DISC_SOURCE,
      evaluate: (given) => {
        const { disc, rim } = bodyOf(given);
        return rotorStress(disc, rim, given.speed);
      },
    },
    { ...numbers, speed },
  );
}

/** Of a rotor of which nothing but disc and rim is known. */
function discWorkings(rotor: Body, diameter: number, speed: number): Working[] {
  const numbers = numbersOf(rotor, diameter);
  const told: Pick<Told, "title" | "output"> = { title: LARGEST, output: ["σ", "Pa", "stress"] };
  const burst = explain(
    {
      ...BURSTS,
      equation: "ω_burst = √(strength/σ(1 rad/s));  it should not be run above ω_burst/2",
      inputs: { ...DISC_INPUTS, strength: MATERIAL },
      evaluate: (given) => {
        const { disc, rim } = bodyOf(given);
        return burstSpeed(disc, rim, given.strength);
      },
    },
    { ...numbers, strength: rotor.strength },
  );
  return [discWorking(told, numbers, speed), burst];
}

/** Of bending at the root of a blade that stands free on its disc. */
function rootWorking(rotor: Body, standing: BladeShape, bending: number, speed: number): Working {
  return workedOut(
    {
      title: "bending at a blade's root",
      equation: "σ_root = 3·ρ_m·ω²·r_m·cos β·L²/t_b",
      output: ["σ_root", "Pa", "stress"],
      source:
        "cantilever under an even load (Timoshenko, Strength of Materials, part I); docs/method/limits.md",
      assumptions: ["A flat blade of even thickness, without a shroud to hold its free end."],
    },
    [
      [["ρ_m", "density of the material", "kg/m³"], rotor.density],
      [SPEED, speed],
      [["r_m", "radius of the blade's middle", "m"], standing.radius],
      [["β", "between the blade and the tangent", "°"], standing.angle],
      [["L", "height of the blade over its disc", "m"], standing.height],
      [["t_b", "thickness of the blade", "m"], standing.thickness],
    ],
    bending,
  );
}

/** Of a rotor whose blades stand free: the greater of what its disc bears and what a blade's root does. */
function standingWorkings(rotor: Body, diameter: number, speed: number, root: Working): Working[] {
  const told: Pick<Told, "title" | "output"> = {
    title: "stress of disc and blades",
    output: ["σ_disc", "Pa", "stress"],
  };
  const disc = discWorking(told, numbersOf(rotor, diameter), speed);
  const stress = Math.max(disc.result.value, root.result.value);
  const largest = workedOut(
    {
      title: LARGEST,
      equation: "σ = max(σ_disc, σ_root)",
      output: ["σ", "Pa", "stress"],
      source: "what breaks first; docs/method/limits.md",
    },
    [
      [["σ_disc", "stress of disc and blades", "Pa", "stress"], disc.result.value],
      [["σ_root", "bending at a blade's root", "Pa", "stress"], root.result.value],
    ],
    stress,
  );
  const burst = workedOut(
    { ...BURSTS, equation: "ω_burst = ω·√(strength/σ);  it should not be run above ω_burst/2" },
    [
      [SPEED, speed],
      [MATERIAL, rotor.strength],
      [["σ", "largest stress of the rotor", "Pa", "stress"], stress],
    ],
    burstSpeedOf(rotor, diameter),
  );
  return [largest, burst, disc, root];
}

/** @returns workings of stress and burst speed of a rotor that turns; none where its material is not known */
export function rotorWorkings(
  { build, rotor }: Pick<LimitsInput, "build" | "rotor">,
  speed: number,
): Working[] {
  if (!rotor) return [];
  const { diameter } = build.rotor;
  const bending = bendingOf(rotor, speed);
  if (!rotor.standing || bending === null || speed === 0) return discWorkings(rotor, diameter, speed);
  return standingWorkings(rotor, diameter, speed, rootWorking(rotor, rotor.standing, bending, speed));
}

/** @returns how many times faster a rotor could turn before it bursts [-], at a speed [rad/s] */
export function burstFactorWorking(factor: number, speed: number): Working {
  return workedOut(
    {
      title: "burst speed over its own",
      equation: "f = ω_burst/ω = √(strength/σ)",
      output: ["f", ""],
      source: DISC_SOURCE,
    },
    [
      [SPEED, speed],
      [["ω_burst", "speed at which it bursts", "rad/s"], factor * speed],
    ],
    factor,
  );
}

/**
 * How the limits' figures came about.
 *
 *     settled winding, stress of the rotor, speed at which it bursts, that over its own
 *
 * @param input - of the limits [SI]
 * @param limits - from {@link limitsOf} [SI]
 * @returns the workings of what is known [SI]
 *
 * Valid and source: as the relations
 */
export function limitWorkings(input: LimitsInput, limits: Limits): Working[] {
  const temperature = limits.limits.find(({ key }) => key === "winding")?.value ?? null;
  const winding = temperature === null ? null : windingWorking(input, limits.settledCurrent, temperature);
  const { stress, factor, speed } = limits.rotor;
  const rotor = stress === null ? [] : rotorWorkings(input, speed);
  const factors = factor === null || speed === 0 ? [] : [burstFactorWorking(factor, speed)];
  return [...(winding ? [winding] : []), ...rotor, ...factors];
}
