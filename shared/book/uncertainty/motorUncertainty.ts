import type { Motor } from "../../model/parts/motor.ts";
import { fitLinear } from "../../numeric/leastSquares.ts";
import { RPM, torqueConstant } from "../../physics/motor.ts";
import type { MotorBasis } from "../motorBasis.ts";
import { inUse } from "../readings/reading.ts";
import type { Collector, UncertaintySource } from "./collector.ts";
import { widened } from "./widened.ts";

function makersUncertainty({ name, uncertainty, kv }: Motor, into: Collector): void {
  const source = { from: "stated", what: `maker's figures of ${name}`, test: "motor" } as const;
  into.add("motor.kv", uncertainty.kv, source);
  into.add("motor.resistance", uncertainty.resistance, source);
  const noLoad = uncertainty.noLoadCurrent;
  const isKnown = noLoad !== undefined && kv !== undefined;
  into.add("motor.frictionTorque", isKnown ? torqueConstant(kv) * noLoad : null, source);
  into.add("motor.viscousTorque", uncertainty.viscousTorque, source);
}

/** Standard uncertainty of ln R_th where it is estimated: within a factor of 2. Common practice, no source: docs/method/uncertainty.md, What was never measured here. */
const ESTIMATED_THERMAL = 0.35;

/** The rows that told K_v: at full throttle. */
const rowsInFit = ({ rows }: MotorBasis) => inUse(rows).filter((row) => row.throttle === 1);

/** Change of K_v with the R_m that an ohmmeter gave: k_e = Σω(V − R·I)/Σω². */
function kvByResistance(basis: MotorBasis): number {
  let [currents, speeds] = [0, 0];
  for (const { current, rpm } of rowsInFit(basis)) {
    currents += current * rpm * RPM;
    speeds += (rpm * RPM) ** 2;
  }
  const { kv } = basis.constants;
  return speeds > 0 ? ((kv / torqueConstant(kv)) * currents) / speeds : 0;
}

/** K_v and R_m as the pair they are: a larger R_m leaves less of the voltage to k_e, by the fit or by the ohmmeter's word. */
function constantsUncertainty(
  basis: MotorBasis,
  stated: Motor["uncertainty"],
  into: Collector,
  source: UncertaintySource,
): void {
  if (!basis.fit) return;
  const { standardErrors, correlation } = basis.fit;
  const kv = standardErrors.kv ?? 0;
  const fromFit = standardErrors.resistance;
  const resistance = fromFit ?? stated.resistance ?? 0;
  const slope = fromFit === null ? kvByResistance(basis) : 0;
  const both = fromFit === null ? slope * resistance ** 2 : (correlation ?? 0) * kv * resistance;
  const own =
    fromFit === null
      ? [
          [kv ** 2, 0],
          [0, 0],
        ]
      : [
          [kv ** 2, both],
          [both, resistance ** 2],
        ];
  const [[kk, kr], [, rr]] = widened(own, rowsInFit(basis).length - (fromFit === null ? 1 : 2));
  const covariance =
    fromFit === null
      ? [
          [kk + (slope * resistance) ** 2, both],
          [both, resistance ** 2],
        ]
      : [
          [kk, kr],
          [kr, rr],
        ];
  into.addGroup(["motor.kv", "motor.resistance"], covariance, source);
}

/** M_c and M_v by the scatter of the rows without load; M_c alone where M_v was not told. */
function frictionCovariance(basis: MotorBasis): readonly (readonly number[])[] | null {
  const free = rowsInFit(basis).filter((row) => row.noLoad && row.rpm > 0);
  const { constants } = basis;
  const torques = free.map((row) => torqueConstant(constants.kv) * row.current);
  const viscous = constants.viscousTorque > 0 && constants.frictionTorque > 0;
  if (free.length < (viscous ? 3 : 2)) return null;
  const { covariance } = fitLinear({
    design: free.map((row) => (viscous ? [1, row.rpm * RPM] : [1])),
    response: torques,
  });
  return covariance && widened(covariance, free.length - (viscous ? 2 : 1));
}

/** A motor's constants stay the same object whatever is tried of the build around it. */
const fitted = new WeakMap<MotorBasis, ReturnType<typeof frictionCovariance>>();

function frictionUncertainty(basis: MotorBasis, into: Collector, source: UncertaintySource): void {
  const known = fitted.get(basis);
  const covariance = known === undefined ? frictionCovariance(basis) : known;
  fitted.set(basis, covariance);
  const paths = ["motor.frictionTorque", "motor.viscousTorque"];
  if (covariance) into.addGroup(paths.slice(0, covariance.length), covariance, source);
}

/** Constants of the motor, from its tests or as its maker states them, and its thermal resistance as stated. */
export function addMotorUncertainty(motor: Motor, basis: MotorBasis, into: Collector): void {
  const source = { from: "fit", what: `motor tests of ${motor.name}`, test: "motor" } as const;
  if (basis.basis === "stated") makersUncertainty(motor, into);
  else {
    constantsUncertainty(basis, motor.uncertainty, into, source);
    frictionUncertainty(basis, into, source);
  }
  const what = `thermal resistance of ${motor.name}`;
  if (motor.thermalResistance !== undefined)
    into.add("motor.thermalResistance", motor.uncertainty.thermalResistance, {
      from: "stated",
      what,
      test: null,
    });
  if (basis.thermal.basis === "estimated")
    into.addFactor("motor.thermalResistance", ESTIMATED_THERMAL, {
      from: "estimate",
      what: `${what}, by its can or a guess, within a factor of 2`,
      test: null,
    });
}
