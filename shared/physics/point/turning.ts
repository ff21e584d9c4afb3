import { NotEnoughDataError } from "../../numeric/errors.ts";
import { evaluatePolynomial, firstPositiveZero } from "../../numeric/polynomial.ts";
import { findRoot } from "../../numeric/root.ts";
import { solveIncreasing } from "../../numeric/solveIncreasing.ts";
import type { Air } from "../air.ts";
import { type PropellerInput, thrustAndPower } from "../propellerLaw.ts";
import type { RotorInput } from "./machine.ts";
import { sizeLaw } from "./sizeLaw.ts";

/** What a rotor has to deliver, whatever its size. */
export interface Delivery {
  /** Q [m³/s] */
  readonly flow: number;
  /** Δp [Pa] */
  readonly pressure: number;
}

/** How a rotor turns that does a duty. */
export interface Turning {
  /** ω [rad/s] */
  readonly speed: number;
  /** M at the rotor [N·m] */
  readonly torque: number;
}

/** Intervals of the scan over φ, as many as a prediction looks through. */
const SCAN = 256;
/** Times the tested range is doubled in search of an end, for a curve whose ψ has no zero. */
const MOST_DOUBLINGS = 40;

interface Family {
  readonly rotor: RotorInput;
  readonly air: Air;
  /** πD²/4 [m²] */
  readonly area: number;
  /** factor of the size correction by tip speed [m/s → -] */
  readonly factor: (tipSpeed: number) => number;
}

function familyWith(rotor: RotorInput, air: Air, phiEnd: number): Family & { readonly phiEnd: number } {
  const area = (Math.PI / 4) * rotor.diameter ** 2;
  return { rotor, air, area, factor: sizeLaw(rotor, phiEnd, air).factor, phiEnd };
}

const familyAt = (rotor: RotorInput, air: Air) =>
  familyWith(rotor, air, firstPositiveZero(rotor.psi) ?? Number.POSITIVE_INFINITY);

/** Pressure that the rotor makes beyond the duty's, at the tip speed that moves its flow [Pa]. */
function excessPressure({ rotor, air, area, factor }: Family, duty: Delivery, phi: number): number {
  const tipSpeed = duty.flow / (area * phi);
  const psi = evaluatePolynomial(rotor.psi, phi) * factor(tipSpeed);
  return 0.5 * air.density * tipSpeed ** 2 * psi - duty.pressure;
}

function endOf(phiEnd: number, { rotor }: Family, excess: (phi: number) => number): number {
  if (Number.isFinite(phiEnd)) return phiEnd;
  let end = rotor.phiMax;
  for (let i = 0; i < MOST_DOUBLINGS; i++, end *= 2) if (excess(end) < 0) return end;
  throw new NotEnoughDataError(
    "The curve's pressure never falls to what the leak lets through.",
    "Measure the rotor nearer to open, where its pressure is 0.",
    "rotor.psi",
  );
}

/** Every φ at which the rotor does the duty, the largest, which turns slowest, first. */
function flowCoefficients(family: Family & { readonly phiEnd: number }, duty: Delivery): number[] {
  const excess = (phi: number) => excessPressure(family, duty, phi);
  const end = endOf(family.phiEnd, family, excess);
  const found: number[] = [];
  let below = excess(end);
  for (let i = SCAN; i > 1; i--) {
    const [lo, hi] = [(end * (i - 1)) / SCAN, (end * i) / SCAN];
    const above = below;
    below = excess(lo);
    if (above === 0) found.push(hi);
    else if (below !== 0 && below > 0 !== above > 0) found.push(findRoot(excess, lo, hi).root);
  }
  // Towards φ = 0 the tip speed, and with it the pressure, grows without bound.
  let near = end / SCAN;
  if (excess(near) < 0) {
    let far = near / 2;
    while (excess(far) < 0) [near, far] = [far, far / 2];
    found.push(findRoot(excess, far, near).root);
  }
  return found;
}

/** Against a sealed skirt: ½ρu²·ψ(0)·f(u) = Δp. */
function sealedSpeed({ rotor, air, factor }: Family, { pressure }: Delivery): number {
  const plain = Math.sqrt((2 * pressure) / (air.density * rotor.psi[0]));
  if (!rotor.sizeCorrection) return plain;
  return solveIncreasing((u) => u * u * factor(u) - plain * plain, plain);
}

function turningAt({ rotor, air, area }: Family, phi: number, tipSpeed: number): Turning {
  const radius = rotor.diameter / 2;
  const speed = tipSpeed / radius;
  const lambda = evaluatePolynomial(rotor.lambda, phi);
  return { speed, torque: 0.5 * air.density * area * radius ** 3 * speed ** 2 * lambda };
}

/**
 * How a ducted rotor of one size turns when it does a duty; more than one way where its curve has a stall hump.
 *
 *     φ from Q/√Δp: Q = φ·A·u and Δp = ½ρu²·ψ(φ)·f(u);  ω = 2u/D,  M = ½ρA(D/2)³ω²·λ(φ)
 *
 * @param rotor - at its diameter [m], ψ, λ [-]
 * @param air - density [kg/m³], viscosity [Pa·s]
 * @param duty - Q [m³/s], Δp [Pa]
 * @returns ω [rad/s], M [N·m], the slowest first
 * @throws {NotEnoughDataError} where ψ has no zero and never falls to what the leak lets through
 * @throws {OutOfRangeError} where the size correction leaves no efficiency
 *
 * Valid on φ from 0 to the first positive zero of ψ. Source: fan laws; docs/method/size.md
 */
export function turningsFor(rotor: RotorInput, air: Air, duty: Delivery): Turning[] {
  const family = familyAt(rotor, air);
  if (duty.flow === 0) return [turningAt(family, 0, sealedSpeed(family, duty))];
  return flowCoefficients(family, duty).map((phi) => turningAt(family, phi, duty.flow / (family.area * phi)));
}

/** Where the search for the one φ begins, in shares of the curve's end [-]. */
const NEAR_BLOCKED = 1 / 1024;

/**
 * The same for a rotor that is known to do it in one way.
 *
 *     as {@link turningsFor}, the one root between its ends
 *
 * @param rotor - at its diameter [m], ψ, λ [-]
 * @param air - density [kg/m³], viscosity [Pa·s]
 * @param duty - Q [m³/s], Δp [Pa]
 * @param phiEnd - first positive zero of ψ [-]
 * @returns φ [-], ω [rad/s], M [N·m]
 * @throws {OutOfRangeError} where the size correction leaves no efficiency
 *
 * Valid where ψ·f/φ² falls throughout, as where one crossing is proven. Source: as {@link turningsFor}
 */
export function soleTurning(
  rotor: RotorInput,
  air: Air,
  duty: Delivery,
  phiEnd: number,
): Turning & { readonly phi: number } {
  const family = familyWith(rotor, air, phiEnd);
  if (duty.flow === 0) return { ...turningAt(family, 0, sealedSpeed(family, duty)), phi: 0 };
  const excess = (phi: number) => excessPressure(family, duty, phi);
  let near = phiEnd * NEAR_BLOCKED;
  while (excess(near) < 0) near /= 2;
  const phi = findRoot(excess, near, phiEnd).root;
  return { ...turningAt(family, phi, duty.flow / (family.area * phi)), phi };
}

/**
 * How an open propeller of one size turns when it makes a thrust.
 *
 *     T = C_T(Re)·ρn²D⁴,  M = C_P(Re)·ρn²D⁵/(2π)
 *
 * @param rotor - at its diameter [m], coefficients [-]
 * @param air - density [kg/m³], viscosity [Pa·s]
 * @param thrust - T [N], > 0
 * @returns ω [rad/s], M [N·m]
 * @throws {NoConvergenceError} where its coefficients reach that thrust at no speed
 *
 * Valid standing still, away from the surface. Source: docs/method/fits/propeller.md
 */
export function turningForThrust(rotor: PropellerInput, air: Air, thrust: number): Turning {
  const about = Math.max(1e-6, Math.abs(rotor.thrust[0])) * air.density * rotor.diameter ** 4;
  const speed = solveIncreasing(
    (omega) => thrustAndPower(rotor, air, omega).thrust - thrust,
    2 * Math.PI * Math.sqrt(thrust / about),
  );
  return { speed, torque: thrustAndPower(rotor, air, speed).power / speed };
}
