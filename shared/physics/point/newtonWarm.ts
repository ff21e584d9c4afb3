import { CASE, RESULT } from "./newton.ts";

/**
 * One operating point by Newton's method in (φ, w, ω), for what newton.ts leaves out: a winding that warms, a curve
 * that changes with Reynolds number, a measured leak, a joint under the lip. w is the air's velocity in the lip gap or, without one, Δp.
 * At a given current the warm winding is explicit, so no iteration is nested but that of a turbulent joint's velocity, and nothing is allocated.
 */

/** Where each number of a case lies in its Float64Array: those of {@link CASE}, and more. */
export const WARM = {
  ...CASE,
  /** C_L in the gap's place, where its area is 0 [m³/(s·Pa^x)] */
  leakCoefficient: 24,
  leakExponent: 25,
  /** a and b in F = a − b·u^−0.2, the factor on ψ; 1 and 0: uncorrected */
  sizeMost: 26,
  sizeFall: 27,
  /** of the winding at the air's temperature, or at 20 °C where it is taken cold [Ω] */
  windingResistance: 28,
  /** R₂₀·α·R_th [1/A²]; 0: taken cold */
  heating: 29,
  /** R_d + δ²R_b [Ω] */
  circuitResistance: 30,
  /** s·(h + d) of the lip over a joint; 0: none [m²] */
  jointArea: 31,
  jointInertia: 32,
  jointLaminar: 33,
  jointTurbulent: 34,
  jointCrossing: 35,
  length: 36,
} as const;

/** Where each result lies: those of {@link RESULT}, gapVelocity being w, and more. */
export const WARM_RESULT = {
  ...RESULT,
  /** I [A] */
  current: 6,
  /** R_m, warm [Ω] */
  windingResistance: 7,
  /** change of leak less rotor flow with φ, next to the crossing: below 0 where it is stable by flow [m³/s] */
  slope: 8,
  length: 9,
} as const;

const MAX_ITERATIONS = 40;
/** A step this small is followed by none: Newton squares it, far below rounding. */
const SETTLED = 1e-9;
/** Power of the Reynolds number in Ackeret's formula. */
const ACKERET_POWER = -0.2;

/** Relative change of the speed up to which the loss follows by its series. */
const SMALL_CHANGE = 0.01;

/** u^−0.2 from its value at the speed before, by the binomial series of (1 − δ)^−0.2: its error is 0.07·δ⁴. */
function nearerLoss(before: number, u: number): number {
  const square = before * before;
  const change = 1 - u * square * square * before;
  if (!(Math.abs(change) < SMALL_CHANGE)) return u ** ACKERET_POWER;
  return before * (1 + change * (0.2 + change * (0.12 + change * 0.088)));
}

/** Steps of a joint's velocity: from above, each squares the error. */
const JOINT_STEPS = 8;

/**
 * Velocity of the air over a joint at a pressure.
 *
 *     ½ρK·v² + b·v = Δp, or ½ρK·v² + c·v^1.75 = Δp
 *
 * @param c - the case, laid out as {@link WARM}, SI
 * @param drop - Δp [Pa], > 0
 * @returns v [m/s]
 *
 * Valid for a case with a joint; allocates nothing. Source: as the lip gap, docs/method/restriction.md
 */
export function jointVelocity(c: Float64Array, drop: number): number {
  const inertia = c[WARM.jointInertia];
  const laminar = c[WARM.jointLaminar];
  let v = (2 * drop) / (laminar + Math.sqrt(laminar * laminar + 4 * inertia * drop));
  if (v <= c[WARM.jointCrossing] || laminar === 0) return v;
  const turbulent = c[WARM.jointTurbulent];
  for (let step = 0; step < JOINT_STEPS; step++) {
    const friction = turbulent * v * v * Math.sqrt(Math.sqrt(1 / v));
    const excess = inertia * v * v + friction - drop;
    const next = v - excess / (2 * inertia * v + (1.75 * friction) / v);
    if (!(Math.abs(next - v) > 1e-14 * v)) return next;
    v = next;
  }
  return v;
}

/** dQ/dΔp of a joint at a velocity [m³/(s·Pa)]. */
function jointSlope(c: Float64Array, v: number): number {
  const turbulent = v > c[WARM.jointCrossing];
  const friction = turbulent ? 1.75 * c[WARM.jointTurbulent] * v ** 0.75 : c[WARM.jointLaminar];
  return c[WARM.jointArea] / (2 * c[WARM.jointInertia] * v + friction);
}

/**
 * What of a joint's Δp is lost by friction along the land.
 *
 *     b·v or c·v^1.75
 *
 * @param c - the case, laid out as {@link WARM}, SI
 * @param v - over the joint [m/s]
 * @returns Δp_friction [Pa]
 *
 * Valid and source: as {@link jointVelocity}
 */
export function jointFriction(c: Float64Array, v: number): number {
  return v <= c[WARM.jointCrossing] ? c[WARM.jointLaminar] * v : c[WARM.jointTurbulent] * v ** 1.75;
}

/**
 * Solves one case from a start near its crossing.
 *
 *     ½ρu²ψ(φ)(a − b·u^−0.2) = Δp(w),  φ·A·u = Q(w),  V − kω = I·(R_c + R_a/(1 − R₂₀αR_th·I²)),  k·I = M_c + M_v·ω + ½ρAr³λ(φ)ω²
 *
 * One function on purpose: the loop's lines are written out, so that nothing is allocated between them.
 *
 * @param c - the case, laid out as {@link WARM}, SI
 * @param result - laid out as {@link WARM_RESULT}; its φ [-], gap velocity [m/s] or pressure [Pa], and speed [rad/s] are the start, all > 0
 * @returns whether it converged to a point whose winding has a temperature; results are written in place
 *
 * Valid for a skirt that leaks; ψ and λ for which one crossing alone exists, else the one found depends on the start. Source: docs/method/operating-point.md
 */
export function solveWarmCase(c: Float64Array, result: Float64Array): boolean {
  const radius = c[WARM.radius];
  const area = Math.PI * radius * radius;
  const halfDensity = 0.5 * c[WARM.density];
  const loadFactor = halfDensity * area * radius * radius * radius;
  const k = c[WARM.torqueConstant];
  const friction = c[WARM.frictionTorque];
  const viscous = c[WARM.viscousTorque];
  const voltage = c[WARM.drivingVoltage];
  const end = c[WARM.phiEnd];
  const gapArea = c[WARM.gapArea];
  const inertia = c[WARM.gapInertia];
  const opening = c[WARM.openingConductance];
  const leak = c[WARM.leakCoefficient];
  const joint = c[WARM.jointArea];
  const exponent = c[WARM.leakExponent];
  const most = c[WARM.sizeMost];
  const fall = c[WARM.sizeFall];
  const winding = c[WARM.windingResistance];
  const heating = c[WARM.heating];
  const circuit = c[WARM.circuitResistance];
  let phi = result[WARM_RESULT.phi];
  let w = result[WARM_RESULT.gapVelocity];
  let speed = result[WARM_RESULT.speed];
  let settled = false;
  let slope = Number.NaN;
  let lossAtSpeed = fall === 0 ? 0 : (speed * radius) ** ACKERET_POWER;
  for (let iteration = 1; iteration <= MAX_ITERATIONS; iteration++) {
    const psi = c[0] + phi * (c[1] + phi * (c[2] + phi * (c[3] + phi * c[4])));
    const psiSlope = c[1] + phi * (2 * c[2] + phi * (3 * c[3] + phi * 4 * c[4]));
    const lambda = c[5] + phi * (c[6] + phi * (c[7] + phi * (c[8] + phi * c[9])));
    const lambdaSlope = c[6] + phi * (2 * c[7] + phi * (3 * c[8] + phi * 4 * c[9]));
    const u = speed * radius;
    if (fall !== 0) lossAtSpeed = nearerLoss(lossAtSpeed, u);
    const lost = fall * lossAtSpeed;
    const factor = most - lost;
    const head = halfDensity * u * u;
    const rise = head * psi * factor;
    const riseByPhi = head * psiSlope * factor;
    const riseBySpeed = (head * psi * (2 * factor - ACKERET_POWER * lost)) / speed;
    const flow = phi * area * u;
    const load = loadFactor * speed * speed;
    const current = (friction + viscous * speed + load * lambda) / k;
    const cool = 1 - heating * current * current;
    if (settled) {
      if (!(cool > 0 && factor > 0)) return false;
      result[WARM_RESULT.phi] = phi;
      result[WARM_RESULT.speed] = speed;
      result[WARM_RESULT.flow] = flow;
      result[WARM_RESULT.pressure] = rise;
      result[WARM_RESULT.gapVelocity] = w;
      result[WARM_RESULT.iterations] = iteration;
      result[WARM_RESULT.current] = current;
      result[WARM_RESULT.windingResistance] = winding / cool;
      result[WARM_RESULT.slope] = slope;
      return true;
    }
    let drop = w;
    let dropSlope = 1;
    let through = 0;
    let throughSlope = 0;
    if (gapArea > 0) {
      const isLaminar = w <= c[WARM.gapCrossing];
      const frictionDrop = isLaminar
        ? c[WARM.gapLaminar] * w
        : c[WARM.gapTurbulent] * w * w * Math.sqrt(Math.sqrt(1 / w));
      drop = inertia * w * w + frictionDrop;
      dropSlope = 2 * inertia * w + (isLaminar ? c[WARM.gapLaminar] : (1.75 * frictionDrop) / w);
      through = gapArea * w;
      throughSlope = gapArea;
    } else if (leak > 0) {
      through = leak * w ** exponent;
      throughSlope = (exponent * through) / w;
    }
    if (joint > 0 && drop > 0) {
      const v = jointVelocity(c, drop);
      through += joint * v;
      throughSlope += jointSlope(c, v) * dropSlope;
    }
    const rootDrop = Math.sqrt(drop);
    through += opening * rootDrop;
    throughSlope += (opening * 0.5 * dropSlope) / rootDrop;
    const emf = voltage - k * speed;
    const short = emf * cool - current * (circuit * cool + winding);
    const shortByCurrent = -2 * heating * current * (emf - current * circuit) - circuit * cool - winding;
    const shortBySpeed = -k * cool + (shortByCurrent * (viscous + 2 * loadFactor * lambda * speed)) / k;
    const speedAside = -short / shortBySpeed;
    const speedByPhi = (-shortByCurrent * load * lambdaSlope) / (k * shortBySpeed);
    const excessPressure = rise - drop + riseBySpeed * speedAside;
    const excessFlow = flow - through + (flow / speed) * speedAside;
    const riseSlope = riseByPhi + riseBySpeed * speedByPhi;
    const flowSlope = area * u + (flow / speed) * speedByPhi;
    const determinant = throughSlope * riseSlope - flowSlope * dropSlope;
    slope = determinant / dropSlope;
    const phiStep = (dropSlope * excessFlow - throughSlope * excessPressure) / determinant;
    const wStep = (riseSlope * excessFlow - flowSlope * excessPressure) / determinant;
    const speedStep = speedAside + speedByPhi * phiStep;
    const nextPhi = phi + phiStep;
    const nextW = w + wStep;
    const nextSpeed = speed + speedStep;
    settled =
      Math.abs(phiStep) < SETTLED * phi &&
      Math.abs(wStep) < SETTLED * w &&
      Math.abs(speedStep) < SETTLED * speed;
    phi = nextPhi > 0 ? (nextPhi < end ? nextPhi : 0.5 * (phi + end)) : 0.5 * phi;
    w = nextW > 0 ? nextW : 0.5 * w;
    speed = nextSpeed > 0 ? nextSpeed : 0.5 * speed;
  }
  return false;
}

/**
 * Solves one case of a skirt that nothing leaks through: φ is 0.
 *
 *     V − kω = I·(R_c + R_m(I)),  k·I = M_c + M_v·ω + ½ρAr³λ(0)ω²;  Δp = ½ρu²ψ(0)(a − b·u^−0.2)
 *
 * @param c - the case, laid out as {@link WARM}, SI
 * @param result - laid out as {@link WARM_RESULT}; its speed is the start, > 0 [rad/s]
 * @returns whether it converged; results are written in place, flow and φ exactly 0
 *
 * Valid for a motor that turns once its winding has settled. Source: docs/method/operating-point.md
 */
export function solveSealedCase(c: Float64Array, result: Float64Array): boolean {
  const radius = c[WARM.radius];
  const halfDensity = 0.5 * c[WARM.density];
  const load = halfDensity * Math.PI * radius ** 5 * c[WARM.lambda];
  const k = c[WARM.torqueConstant];
  const heating = c[WARM.heating];
  const circuit = c[WARM.circuitResistance];
  const winding = c[WARM.windingResistance];
  let speed = result[WARM_RESULT.speed];
  let settled = false;
  for (let iteration = 1; iteration <= MAX_ITERATIONS; iteration++) {
    const current = (c[WARM.frictionTorque] + speed * (c[WARM.viscousTorque] + load * speed)) / k;
    const cool = 1 - heating * current * current;
    const u = speed * radius;
    if (settled) {
      const factor = c[WARM.sizeMost] - c[WARM.sizeFall] * u ** ACKERET_POWER;
      if (!(cool > 0 && factor > 0)) return false;
      result[WARM_RESULT.phi] = 0;
      result[WARM_RESULT.speed] = speed;
      result[WARM_RESULT.flow] = 0;
      result[WARM_RESULT.pressure] = halfDensity * u * u * c[WARM.psi] * factor;
      result[WARM_RESULT.gapVelocity] = 0;
      result[WARM_RESULT.iterations] = iteration;
      result[WARM_RESULT.current] = current;
      result[WARM_RESULT.windingResistance] = winding / cool;
      return true;
    }
    const emf = c[WARM.drivingVoltage] - k * speed;
    const short = emf * cool - current * (circuit * cool + winding);
    const byCurrent = -2 * heating * current * (emf - current * circuit) - circuit * cool - winding;
    const bySpeed = -k * cool + (byCurrent * (c[WARM.viscousTorque] + 2 * load * speed)) / k;
    const step = -short / bySpeed;
    settled = Math.abs(step) < SETTLED * speed;
    speed = speed + step > 0 ? speed + step : 0.5 * speed;
  }
  return false;
}
