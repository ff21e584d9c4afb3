/**
 * One operating point by Newton's method in (φ, v), v the air's velocity in the lip gap: both laws are explicit
 * in these two, so a step costs no inner iteration and nothing is allocated. The scan of operatingPoint.ts finds
 * every crossing; this one finds the crossing next to its start, fast, for sweeps, sampling and choosing.
 */

/** Coefficients of a rotor's polynomials that the solver takes, ascending powers: up to degree 4. */
export const MOST_COEFFICIENTS = 5;

/** Where each number of a case lies in its Float64Array. */
export const CASE = {
  psi: 0,
  lambda: MOST_COEFFICIENTS,
  /** end of the curve, first positive zero of ψ [-] */
  phiEnd: 2 * MOST_COEFFICIENTS,
  /** D/2 [m] */
  radius: 11,
  /** air [kg/m³] */
  density: 12,
  /** k_t [N·m/A] */
  torqueConstant: 13,
  /** winding and circuit together [Ω] */
  resistance: 14,
  frictionTorque: 15,
  viscousTorque: 16,
  /** δ(V_oc − R_b·I_aux) [V] */
  drivingVoltage: 17,
  /** P·h [m²] */
  gapArea: 18,
  /** ½ρK [Pa·s²/m²] */
  gapInertia: 19,
  /** 12μℓ/h² [Pa·s/m] */
  gapLaminar: 20,
  /** c in Δp_f = c·v^1.75 */
  gapTurbulent: 21,
  /** v where the two frictions cross [m/s] */
  gapCrossing: 22,
  /** Σ C_d·A·√(2/ρ) [m³/(s·Pa^½)] */
  openingConductance: 23,
  length: 24,
} as const;

/** Where each result lies. */
export const RESULT = {
  phi: 0,
  speed: 1,
  flow: 2,
  pressure: 3,
  gapVelocity: 4,
  iterations: 5,
  length: 6,
} as const;

const MAX_ITERATIONS = 40;
/** A step this small is followed by none: Newton squares it, far below rounding. */
const SETTLED = 1e-9;

/**
 * Solves one case from a start near its crossing.
 *
 *     ½ρu²ψ(φ) = Δp_gap(v),  φ·A·u = P·h·v + Σ C_d·A·√(2Δp/ρ),  u from the balance of torques at φ
 *
 * One function on purpose: the loop's lines are written out, so that nothing is called or allocated between them.
 *
 * @param c - the case, laid out as {@link CASE}, SI
 * @param result - laid out as {@link RESULT}; its φ [-] and gap velocity [m/s] are the start, both > 0
 * @returns whether it converged; results [-, rad/s, m³/s, Pa, m/s] are written in place
 *
 * Valid for a lip gap above 0 and a motor that overcomes its friction; ψ falling on (0, φ_end), else the crossing found depends on the start. Source: docs/method/operating-point.md
 */
export function solveCase(c: Float64Array, result: Float64Array): boolean {
  const radius = c[CASE.radius];
  const density = c[CASE.density];
  const k = c[CASE.torqueConstant];
  const resistance = c[CASE.resistance];
  const end = c[CASE.phiEnd];
  const area = Math.PI * radius * radius;
  const halfDensity = 0.5 * density;
  const loadFactor = halfDensity * area * radius * radius * radius;
  const damping = (k * k) / resistance + c[CASE.viscousTorque];
  const drive = (k * c[CASE.drivingVoltage]) / resistance - c[CASE.frictionTorque];
  const gapArea = c[CASE.gapArea];
  const inertia = c[CASE.gapInertia];
  const laminar = c[CASE.gapLaminar];
  const turbulent = c[CASE.gapTurbulent];
  const crossing = c[CASE.gapCrossing];
  const opening = c[CASE.openingConductance];
  let phi = result[RESULT.phi];
  let v = result[RESULT.gapVelocity];
  let settled = false;
  for (let iteration = 1; iteration <= MAX_ITERATIONS; iteration++) {
    const psi = c[0] + phi * (c[1] + phi * (c[2] + phi * (c[3] + phi * c[4])));
    const psiSlope = c[1] + phi * (2 * c[2] + phi * (3 * c[3] + phi * 4 * c[4]));
    const lambda = c[5] + phi * (c[6] + phi * (c[7] + phi * (c[8] + phi * c[9])));
    const lambdaSlope = c[6] + phi * (2 * c[7] + phi * (3 * c[8] + phi * 4 * c[9]));
    const root = Math.sqrt(damping * damping + 4 * loadFactor * lambda * drive);
    const speed = (2 * drive) / (damping + root);
    const u = speed * radius;
    const uSlope = (-loadFactor * lambdaSlope * speed * speed * radius) / root;
    const rise = halfDensity * u * u * psi;
    const riseSlope = halfDensity * u * (2 * uSlope * psi + u * psiSlope);
    const flow = phi * area * u;
    const flowSlope = area * (u + phi * uSlope);
    const isLaminar = v <= crossing;
    const frictionDrop = isLaminar ? laminar * v : turbulent * v * v * Math.sqrt(Math.sqrt(1 / v));
    const drop = inertia * v * v + frictionDrop;
    const dropSlope = 2 * inertia * v + (isLaminar ? laminar : (1.75 * frictionDrop) / v);
    const rootDrop = Math.sqrt(drop);
    const excessFlow = flow - gapArea * v - opening * rootDrop;
    const excessPressure = rise - drop;
    if (settled) {
      result[RESULT.phi] = phi;
      result[RESULT.speed] = speed;
      result[RESULT.flow] = flow;
      result[RESULT.pressure] = rise;
      result[RESULT.gapVelocity] = v;
      result[RESULT.iterations] = iteration;
      return true;
    }
    const leakSlope = gapArea + (opening * 0.5 * dropSlope) / rootDrop;
    const determinant = leakSlope * riseSlope - flowSlope * dropSlope;
    const phiStep = (dropSlope * excessFlow - leakSlope * excessPressure) / determinant;
    const vStep = (riseSlope * excessFlow - flowSlope * excessPressure) / determinant;
    const nextPhi = phi + phiStep;
    const nextV = v + vStep;
    settled = Math.abs(phiStep) < SETTLED * phi && Math.abs(vStep) < SETTLED * v;
    phi = nextPhi > 0 ? (nextPhi < end ? nextPhi : 0.5 * (phi + end)) : 0.5 * phi;
    v = nextV > 0 ? nextV : 0.5 * v;
  }
  return false;
}
