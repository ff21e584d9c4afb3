import type { Measured } from "../../model/parts/instrument.ts";
import type { BenchTest } from "../../model/tests/index.ts";
import { type Book, findById, oncePerBook } from "../book.ts";
import { keptWhile } from "../keptWhile.ts";
import type { Resolved } from "../resolve.ts";
import type { Collector } from "./collector.ts";
import { Gains, type Response, type ToldGain } from "./gains.ts";
import type { PullResponse } from "./pullResponse.ts";

const testOf = (book: Book, id: string): BenchTest | null => findById(book.tests, id)?.data ?? null;

const coefficients = (
  name: string,
  curve: readonly number[],
  by: (power: number) => Response["by"],
): Response[] => curve.map((value, power) => ({ path: `${name}.${power}`, value, by: by(power) }));

/** cⱼ of ψ = 2Δp/(ρu²) and of λ ∝ M·ω/u³ in powers of φ = Q/(A·u): each reading read g too high moves cⱼ in proportion. */
function addCurve(book: Book, rotor: Resolved["rotor"], gains: Gains): void {
  if (rotor?.basis !== "measured" || !rotor.fit) return;
  const used = rotor.points.filter((point) => point.setAside === null);
  for (const id of rotor.testIds) {
    const test = testOf(book, id);
    if (test?.kind !== "curve") continue;
    const share = used.filter((point) => point.testId === id).length / used.length;
    const metered = test.flowFrom === "bleed-plate";
    const flow = (power: number) => (metered ? { plate: -power } : { flow: -power });
    const psi = coefficients("rotor.psi", rotor.psi, (j) => ({
      pressure: metered ? 1 - j / 2 : 1,
      speed: j - 2,
      ...flow(j),
    }));
    const torque = test.rows.some((row) => row.torque !== undefined);
    const lambda = coefficients("rotor.lambda", rotor.lambda ?? [], (j) => ({
      ...(metered ? { pressure: -j / 2 } : {}),
      speed: j - 2,
      ...flow(j),
      ...(torque ? { torque: 1 } : { current: 1 }),
    }));
    gains.add(test, share, [...psi, ...lambda]);
  }
}

/** Q = C_L·Δp^x: a pressure read g too high lowers ln C_L by x·g, and raises a plate's flow by g/2. */
function addLeak(book: Book, leak: Resolved["leak"], gains: Gains): void {
  if (!leak) return;
  const { coefficient, exponent } = leak.leak;
  for (const id of leak.testIds) {
    const test = testOf(book, id);
    if (test?.kind !== "leak") continue;
    const metered = test.flowFrom === "bleed-plate";
    const by = metered ? { pressure: 0.5 - exponent, plate: 1 } : { pressure: -exponent, flow: 1 };
    gains.add(test, 1 / leak.testIds.length, [
      { path: "skirt.measuredLeak.coefficient", value: coefficient, by },
    ]);
  }
}

/** V = R·I + k_e·ω and M = k_t·I: what voltmeter, ammeter and tachometer do to K_v, R_m, M_c and M_v. */
const OF_MOTOR: Readonly<Record<string, Readonly<Partial<Record<Measured, number>>>>> = {
  kv: { voltage: -1, speed: 1 },
  resistance: { voltage: 1, current: -1 },
  frictionTorque: { voltage: 1, speed: -1, current: 1 },
  viscousTorque: { voltage: 1, speed: -2, current: 1 },
};

function addMotor(book: Book, motor: Resolved["motor"], gains: Gains): void {
  if (motor?.basis !== "measured") return;
  const { constants, testIds, fit } = motor;
  const byOhmmeter = fit?.standardErrors.resistance === null;
  const told = Object.entries(OF_MOTOR).filter(([key]) => key !== "resistance" || !byOhmmeter);
  const responses = told.map(([key, by]) => ({
    path: `motor.${key}`,
    value: constants[key as keyof typeof constants],
    by,
  }));
  for (const id of testIds) {
    const test = testOf(book, id);
    if (test?.kind === "motor") gains.add(test, 1 / testIds.length, responses);
  }
}

/** What pulls tell of κ goes with the scale that read them, and against the voltage that their prediction took. */
function addPulls(book: Book, pulls: PullResponse | null, gains: Gains): void {
  if (!pulls) return;
  for (const { testId, share, byVoltage } of pulls.tests) {
    const test = testOf(book, testId);
    if (!test) continue;
    const by = { load: pulls.told, voltage: -pulls.told * byVoltage };
    gains.add(test, share, [{ path: "vehicle.pullFactor", value: null, by }]);
  }
}

/** @returns paths of the numbers that instruments can have shifted */
export function readPaths({ input }: Resolved): string[] {
  if (!input) return [];
  const { psi, lambda } = input.rotor;
  return [
    ...psi.map((_, j) => `rotor.psi.${j}`),
    ...lambda.map((_, j) => `rotor.lambda.${j}`),
    ...Object.keys(OF_MOTOR).map((key) => `motor.${key}`),
    ...(input.skirt.measuredLeak ? ["skirt.measuredLeak.coefficient", "skirt.measuredLeak.exponent"] : []),
  ];
}

/**
 * Gains of all instruments that a build's numbers were read with, each one cause for every number that it moves.
 *
 *     the derivative of each fit by its readings' common factor; a test's part by its share of the readings
 *
 * @param book - the whole bench book
 * @param resolved - the build's numbers and their tests
 * @param pulls - how κ answers to its pulls; null where no pull tells it
 * @param into - takes each gain with its effects [unit of each number] and where it comes from
 *
 * Valid for gains of some per cent. A gain that several tests share in part is weighed by their readings. Source: JCGM 100:2008 (GUM), F.1.2.3; docs/method/uncertainty.md, Instruments
 */
export function addGains(book: Book, resolved: Resolved, pulls: PullResponse | null, into: Collector): void {
  const { rotor, leak, motor } = resolved;
  const told = oncePerBook(book, "gains", () => keptWhile(gainsOf));
  for (const { cause, source } of told(book, rotor, leak, motor, pulls)) into.addCause(cause, source);
}

function gainsOf(
  book: Book,
  rotor: Resolved["rotor"],
  leak: Resolved["leak"],
  motor: Resolved["motor"],
  pulls: PullResponse | null,
): ToldGain[] {
  const gains = new Gains(book);
  addCurve(book, rotor, gains);
  addLeak(book, leak, gains);
  addMotor(book, motor, gains);
  addPulls(book, pulls, gains);
  return gains.told();
}
