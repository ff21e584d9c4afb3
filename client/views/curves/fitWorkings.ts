import type { Calibrated } from "../../../shared/fit/calibration.ts";
import { evaluatePolynomial } from "../../../shared/numeric/polynomial.ts";
import { type Board, type Row, subscript, type Told, workedOut } from "../../../shared/physics/working.ts";
import { NO_BOARD } from "../../ui/working/board.ts";
import type { CalibrationPage } from "./calibration/calibrationData.ts";
import { type Fitted, fitBoard, inUse } from "./fitBoard.ts";
import type { FrictionGroup } from "./friction/frictionData.ts";
import type { LeakGroup } from "./leak/leakData.ts";
import type { MotorPage } from "./motor/motorData.ts";
import { inFit } from "./motor/motorFacts.ts";
import { type RotorFamily, readingsInUse } from "./rotor/family.ts";

/** @returns how a rotor's curve came about, coefficient by coefficient, and the flow at which its pressure ends */
export function rotorFitBoard(family: RotorFamily): Board {
  const { fit, phiFree } = family;
  if (!fit) return NO_BOARD;
  const { psi, covariance, residualSd, degree, phiMin, phiMax } = fit;
  const rows: Row[] = [
    [["d", "degree of the polynomial", ""], degree],
    [["s", "residual, of a reading that counts once", ""], residualSd],
    [["φ_min", "least flow coefficient that was tested", ""], phiMin],
    [["φ_max", "greatest flow coefficient that was tested", ""], phiMax],
  ];
  const coefficients = psi.map((value, power): Fitted => {
    const variance = covariance[power]?.[power];
    return {
      told: {
        title: power === 0 ? "ψ with no flow, a₀" : `coefficient a${subscript(power)} of the curve`,
        equation: "ψ = Σ a_j·φ^j,  least Σ w·(ψ_i − ψ(φ_i))²",
        output: [`a${subscript(power)}`, ""],
        source: `weighted least squares, degree by AICc; docs/method/fits/rotor.md`,
        assumptions: [`${fit.reason}.`, "Rotors of one family have one curve at every speed."],
      },
      value,
      error: variance === undefined ? null : Math.sqrt(variance),
      rows,
    };
  });
  const board = fitBoard(coefficients, readingsInUse(family));
  if (phiFree === null) return board;
  const free = workedOut(
    {
      title: "φ with no pressure",
      equation: "ψ(φ_free) = 0",
      output: ["φ_free", ""],
      source: "first root of the curve; docs/method/fits/rotor.md",
    },
    [
      ...psi.map(
        (a, power): Row => [[`a${subscript(power)}`, `coefficient of φ to the power of ${power}`, ""], a],
      ),
      [["ψ", "left there", ""], evaluatePolynomial(psi, phiFree)],
    ],
    phiFree,
  );
  return { ...board, workings: [...board.workings, free] };
}

/** Friction of a motor by its rows without load, and the throttle from which it turns. */
function turningFits({ basis: { fit, constants, throttle } }: MotorPage): Fitted[] {
  const told = {
    equation: "k·I₀ = M_c + M_v·ω,  least Σ (k·I₀_i − M_c − M_v·ω_i)²",
    source: "equivalent DC machine; docs/method/fits/motor.md",
    assumptions: ["By the rows without load; at one speed only, all of it counts as M_c."],
  };
  const rows: Row[] = [[["K_v", "speed constant, k = 60/(2π·K_v)", "rpm/V"], constants.kv]];
  const torque = (title: string, output: Told["output"], value: number): Fitted[] =>
    fit && value > 0 ? [{ told: { ...told, title, output }, value, error: null, rows }] : [];
  return [
    ...torque("friction of the motor", ["M_c", "N·m"], constants.frictionTorque),
    ...torque("friction of the motor that grows with speed", ["M_v", "N·m·s"], constants.viscousTorque),
    ...(throttle && throttle.offset > 0
      ? [
          {
            told: {
              title: "throttle from which it turns",
              equation: "ω = s·(c − c₀),  least Σ (ω_i − s·(c_i − c₀))²",
              output: ["c₀", ""] as const,
              source: "least squares over the straight part of the sweep; docs/method/fits/motor.md",
            },
            value: throttle.offset,
            error: throttle.standardError,
            rows: [],
          },
        ]
      : []),
  ];
}

/** @returns how K_v and resistance came about, friction and the throttle's offset */
export function motorFitBoard(page: MotorPage): Board {
  const { fit } = page.basis;
  if (!fit) return NO_BOARD;
  const source = "least squares over all rows at full throttle; docs/method/fits/motor.md";
  const rows: Row[] = [[["s", "residual of the voltage", "V"], fit.residualSd]];
  const equation = "V = k·ω + R·I,  least Σ (V_i − k·ω_i − R·I_i)²";
  return fitBoard(
    [
      {
        told: {
          title: "speed constant",
          equation: `${equation},  K_v = 60/(2π·k)`,
          output: ["K_v", "rpm/V"],
          source,
        },
        value: fit.kv,
        error: fit.standardErrors.kv,
        rows,
      },
      {
        told: { title: "resistance", equation, output: ["R", "Ω"], source },
        value: fit.resistance,
        error: fit.standardErrors.resistance,
        rows,
      },
      ...turningFits(page),
    ],
    inFit(page),
  );
}

/** @returns how the law of a leak came about */
export function leakFitBoard({ fit, points }: LeakGroup): Board {
  if (!fit) return NO_BOARD;
  const told = {
    equation: "Q = C_L·Δp^x,  least Σ (Q_i − C_L·Δp_i^x)²",
    source: "least squares in the flow; form of ISO 9972 and ASTM E779; docs/method/fits/leak.md",
    assumptions: ["At the air of the test, between the least and the greatest suction that was read."],
  };
  const rows: Row[] = [
    [["Δp_min", "least suction", "Pa"], fit.pressureRange[0]],
    [["Δp_max", "greatest suction", "Pa"], fit.pressureRange[1]],
    [["s", "residual of the flow", "m³/s"], fit.residualSd],
  ];
  const { coefficient, exponent, standardErrors } = fit;
  return fitBoard(
    [
      {
        told: { ...told, title: "coefficient of the leak", output: ["C_L", "m³/(s·Pa^x)"] },
        value: coefficient,
        error: standardErrors.coefficient,
        rows,
      },
      {
        told: { ...told, title: "exponent of the leak", output: ["x", ""] },
        value: exponent,
        error: standardErrors.exponent,
        rows,
      },
    ],
    inUse(points),
  );
}

/** @returns how the friction of a contact came about */
export function frictionFitBoard({ fit, slides }: FrictionGroup): Board {
  if (!fit) return NO_BOARD;
  const told = {
    title: "friction by the tilt board",
    equation: "μ = tan(tilt at which it slides)",
    output: ["μ", ""] as const,
    source: "most likely under brackets of held and slid; docs/method/fits/friction.md",
    assumptions: ["The tilt at which one slide gives scatters normally about one value."],
  };
  const rows: Row[] = [[["s", "scatter of single slides", ""], fit.sd]];
  return fitBoard([{ told, value: fit.mu, error: fit.uncertainty, rows }], inUse(slides));
}

/** A number as it was thought before the tests, and what the tests make of it. */
function calibrated(
  told: Pick<Told, "title" | "output">,
  found: Calibrated,
  before: readonly [value: number, sd: number],
  rows: readonly Row[],
): Fitted {
  const [symbol, unit] = told.output;
  return {
    told: {
      ...told,
      equation: `${symbol} = mean of p(${symbol}) ∝ prior·Π L_i`,
      source:
        "Bayes, every pull and leak reading as likely as its scatter makes it; docs/method/calibration.md",
      assumptions: ["Pulls scatter log-normally about the model; the prior is what was set or stated."],
    },
    value: found.mean,
    error: found.sd,
    rows: [
      [[`${symbol}_0`, "before the tests", unit], before[0]],
      [[`s_0`, "its standard uncertainty before", unit], before[1]],
      ...rows,
    ],
  };
}

/** @returns how gap, pull factor and friction came about */
export function calibrationBoard({ pair, answer, pulls, leaks }: CalibrationPage): Board {
  const { prior } = pair.calibration;
  const rows: Row[] = [
    [["n_pulls", "pulls", ""], pulls.length],
    [["n_leaks", "leak readings", ""], leaks.length],
    ...(answer.scatter === null ? [] : [[["s", "scatter of a single pull", ""], answer.scatter] as const]),
  ];
  const fits = [
    calibrated(
      { title: "gap calibrated", output: ["h", "m"] },
      answer.gap,
      [prior.gap.mean, prior.gap.sd],
      rows,
    ),
    ...(answer.pullFactor
      ? [
          calibrated(
            { title: "pull factor calibrated", output: ["κ", ""] },
            answer.pullFactor,
            [prior.pullFactor.median, prior.pullFactor.sd],
            rows,
          ),
        ]
      : []),
    ...(answer.friction
      ? [
          calibrated(
            { title: "friction calibrated", output: ["μ", ""] },
            answer.friction,
            [prior.friction.mean, prior.friction.sd],
            rows,
          ),
        ]
      : []),
  ];
  return fitBoard(fits, [...pulls, ...leaks]);
}
