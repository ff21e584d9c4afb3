import type { Origin } from "../physics/working.ts";
import { formatFixed } from "../units/format.ts";
import { type Book, findById } from "./book.ts";
import type { BuildWithMass } from "./mass/withMass.ts";
import { type Resolved, solvable } from "./resolve/resolved.ts";

/** A solved build, whose numbers come from somewhere. */
interface Sources {
  readonly book: Book;
  readonly build: BuildWithMass;
  readonly resolved: Resolved;
}

type Numbers = Readonly<Record<string, number | null | undefined>>;

const SET = "Set in the build.";
const SUBSCRIPTS = "₀₁₂₃₄";

/** Several numbers of one origin; those that aren't known are none. */
const from = (what: string, tests: readonly string[], numbers: Numbers): Origin[] =>
  Object.entries(numbers).flatMap(([symbol, value]) =>
    typeof value === "number" ? [{ symbol, value, what, tests }] : [],
  );

function buildOrigins({ build: { air, supply, vehicle, ledger, diameter } }: Sources): Origin[] {
  const mass =
    ledger.length > 0
      ? "The mass on board, as Mass sums it or as typed for the whole."
      : "Typed in the build.";
  return [
    ...from(SET, [], { T: air.temperature, T_a: air.temperature, p: air.pressure, h: air.humidity }),
    ...from(SET, [], { "p₁": air.pressure, D: diameter, j: vehicle.jolt }),
    ...from(SET, [], { δ: supply.duty, R_d: supply.driverResistance, I_aux: supply.auxCurrent }),
    ...from(mass, [], { m: vehicle.mass }),
  ];
}

function rotorOrigins({ resolved: { rotor } }: Sources): Origin[] {
  if (!rotor) return [];
  const coefficients = Object.fromEntries(rotor.psi.map((a, power) => [`a${SUBSCRIPTS[power]}`, a]));
  const what =
    rotor.basis === "estimated"
      ? "Estimated from the rotor's geometry; no curve test yet."
      : "Fitted to every reading of the curve tests that is not set aside.";
  return from(what, rotor.testIds, coefficients);
}

function motorOrigins({ book, build, resolved: { motor } }: Sources): Origin[] {
  if (!motor) return [];
  const { kv, resistance, frictionTorque, viscousTorque } = motor.constants;
  const record = findById(book.motors, build.motor)?.data;
  const what = motor.basis === "measured" ? "Fitted to the motor tests." : "Stated by the motor's maker.";
  const thermal =
    motor.thermal.basis === "estimated"
      ? "Estimated, or a guess on the motor's page."
      : "Stated on the motor's page.";
  return [
    ...from(what, motor.testIds, { K_v: kv, M_c: frictionTorque, M_v: viscousTorque, "R₂₀": resistance }),
    ...from(thermal, [], { R_th: motor.thermal.thermalResistance, τ_th: record?.thermalTimeConstant }),
  ];
}

function packOrigins({ resolved }: Sources): Origin[] {
  const { pack } = resolved;
  const input = solvable(resolved)?.pack;
  if (!pack || !input) return [];
  const curve = {
    measured: "By the discharge tests, at the build's charge.",
    stated: "By the pack's stated curve, at the build's charge.",
    chemistry: `By a published curve of ${pack.chemistry?.name ?? "its chemistry"}, at the build's charge.`,
  }[pack.basis];
  const cold = pack.rise === 1 ? "" : `, times ${formatFixed(pack.rise, 2)} in the air of the build`;
  const ofCell = `Of the pack's cell: its discharge tests, or its page${cold}.`;
  return [
    ...from(curve, pack.testIds, { V_cell: input.openCircuitVoltage }),
    ...from(ofCell, pack.testIds, {
      R_cell: input.cellResistance,
    }),
    ...from("As on the pack's page, or tried in the build.", [], {
      N_s: input.series,
      N_p: input.parallel,
      R_wire: input.wireResistance,
    }),
  ];
}

function gapOrigin({ gap, leak, roughness }: Resolved): Origin[] {
  const words = {
    set: "The gap as the skirt was set.",
    measured: "The gap as gauges measured it.",
    calibrated: "The gap by pull and leak tests.",
    "what-if": "The gap tried in the build.",
  }[gap.basis];
  const measured = leak ? { C_L: leak.leak.coefficient, x: leak.leak.exponent } : {};
  return [
    ...from(words, gap.testIds, { h_gap: gap.value, h: roughness ? null : gap.value }),
    ...from("Fitted to the leak tests at that gap.", leak?.testIds ?? [], measured),
  ];
}

function skirtOrigins({ resolved }: Sources): Origin[] {
  const skirt = resolved.input?.skirt;
  if (!skirt) return [];
  const { pullFactor, calibration } = resolved;
  const told = pullFactor.basis !== "assumed";
  const factor = told ? "Told by the pulls of this skirt." : "1 until pulls of this skirt tell it.";
  return [
    ...from("On the skirt's page.", [], {
      A: skirt.area,
      P: skirt.perimeter,
      ℓ: skirt.land,
      K: skirt.lossSum,
    }),
    ...from(factor, told ? (calibration?.testIds ?? []) : [], { κ: pullFactor.value }),
    ...gapOrigin(resolved),
  ];
}

function frictionOrigins({ resolved: { friction } }: Sources): Origin[] {
  if (!friction) return [];
  const words = {
    measured: "By the tilt tests of these wheels on this surface.",
    calibrated: "By pulls and tilt tests together.",
    stated: "Stated on the surface's page.",
    "what-if": "Tried in the build.",
  }[friction.basis];
  return from(words, friction.testIds, { μ_w: friction.value });
}

function thrustOrigins({ resolved: { thrust } }: Sources): Origin[] {
  if (!thrust) return [];
  const [first, drift = 0] = thrust.fit.thrust;
  return from("Fitted to the thrust tests.", thrust.testIds, {
    C_T: first,
    c_T: drift,
    Re_ref: thrust.fit.referenceReynolds,
  });
}

/**
 * Where the numbers of a build come from that no equation gives: its tests, its parts' pages, what is set in it.
 *
 *     by symbol and value, as its workings write them
 *
 * @param sources - the book, the build with the mass that counts, and what it was resolved to [SI]
 * @returns a sentence each, with the tests that stand behind it [SI]
 *
 * Valid for the workings of that build
 */
export function originsOf(sources: Sources): Origin[] {
  return [
    ...buildOrigins(sources),
    ...rotorOrigins(sources),
    ...motorOrigins(sources),
    ...packOrigins(sources),
    ...skirtOrigins(sources),
    ...frictionOrigins(sources),
    ...thrustOrigins(sources),
  ];
}
