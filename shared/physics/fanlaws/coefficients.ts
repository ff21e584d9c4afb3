import { requireNonNegative, requirePositive } from "../../numeric/errors.ts";

/** A rotor's size and how it turns, in which air. */
export interface RotorState {
  /** D over the blade tips [m] */
  readonly diameter: number;
  /** ω [rad/s] */
  readonly speed: number;
  /** ρ [kg/m³] */
  readonly density: number;
}

export interface RotorReading {
  /** Q [m³/s] */
  readonly flow: number;
  /** suction of the cavity against ambient, Δp [Pa] */
  readonly pressure: number;
  /** P; null where no torque was measured [W] */
  readonly shaftPower: number | null;
}

export interface RotorCoefficients {
  /** φ [-] */
  readonly phi: number;
  /** ψ [-] */
  readonly psi: number;
  /** λ; null without shaft power [-] */
  readonly lambda: number | null;
  /** η = φψ/λ; null without shaft power, or at λ = 0 [-] */
  readonly efficiency: number | null;
}

/**
 * Speed of the blade tips.
 *
 *     u = ω·D/2 = π·D·n
 *
 * @param diameter - D [m], > 0
 * @param speed - ω [rad/s], ≥ 0
 * @returns u [m/s]
 * @throws {OutOfRangeError} on a diameter that is not above 0, a negative or non-finite speed
 *
 * Valid for any rotor. Source: kinematics
 */
export function tipSpeed(diameter: number, speed: number): number {
  return (requirePositive("rotor.diameter", diameter) * requireNonNegative("speed", speed)) / 2;
}

/**
 * Coefficients of a reading, which one family of rotors shares at any speed, size and density.
 *
 *     φ = Q/((π/4)D²u),  ψ = 2Δp/(ρu²),  λ = 2P/(ρ(π/4)D²u³),  η = φψ/λ
 *
 * @param reading - flow [m³/s], suction [Pa], shaft power or null [W]
 * @param state - diameter [m], speed [rad/s], density [kg/m³], all > 0
 * @returns φ, ψ, λ, η [-]
 * @throws {OutOfRangeError} on a state that is not above 0, a negative or non-finite reading
 *
 * Valid for incompressible flow, geometrically alike rotors. Source: definitions of Eck, Bommes, Carolus (from memory); ISO 13348 has the same ψ
 */
export function coefficientsOf(reading: RotorReading, state: RotorState): RotorCoefficients {
  const u = movingTipSpeed(state);
  const throughput = discArea(state) * u;
  const dynamic = dynamicPressure(state, u);
  const phi = requireNonNegative("flow", reading.flow) / throughput;
  const psi = requireNonNegative("pressure", reading.pressure) / dynamic;
  if (reading.shaftPower === null) return { phi, psi, lambda: null, efficiency: null };
  const lambda = requireNonNegative("shaftPower", reading.shaftPower) / (throughput * dynamic);
  return { phi, psi, lambda, efficiency: lambda === 0 ? null : (phi * psi) / lambda };
}

/**
 * What a rotor of the family does at another speed, size or density: the fan laws.
 *
 *     Q = φ·(π/4)D²u,  Δp = ψ·½ρu²,  P = λ·½ρ·(π/4)D²u³
 *
 * @param coefficients - φ, ψ, λ or null [-]
 * @param state - diameter [m], speed [rad/s], density [kg/m³], all > 0
 * @returns flow [m³/s], suction [Pa], shaft power or null [W]
 * @throws {OutOfRangeError} on a state that is not above 0
 *
 * Valid as {@link coefficientsOf}, its inverse. Source: as there
 */
export function readingOf(
  coefficients: Pick<RotorCoefficients, "phi" | "psi" | "lambda">,
  state: RotorState,
): RotorReading {
  const u = movingTipSpeed(state);
  const throughput = discArea(state) * u;
  const dynamic = dynamicPressure(state, u);
  const { phi, psi, lambda } = coefficients;
  return {
    flow: phi * throughput,
    pressure: psi * dynamic,
    shaftPower: lambda === null ? null : lambda * throughput * dynamic,
  };
}

/**
 * A curve from a blocked and an open reading alone, to be marked as a two-point curve.
 *
 *     ψ(φ) = ψ₀·(1 − (φ/φ_free)²)
 *
 * @param psi0 - ψ with no flow [-], > 0
 * @param phiFree - φ with no pressure [-], > 0
 * @returns coefficients of ψ in ascending powers of φ [-]
 * @throws {OutOfRangeError} on a number that is not finite and above 0
 *
 * Valid as a first guess between the two readings; a stall hump stays unseen. Source: common practice, no source
 */
export function twoPointCurve(psi0: number, phiFree: number): [number, number, number] {
  requirePositive("psi0", psi0);
  return [psi0, 0, -psi0 / requirePositive("phiFree", phiFree) ** 2];
}

function movingTipSpeed(state: RotorState): number {
  requirePositive("speed", state.speed);
  return tipSpeed(state.diameter, state.speed);
}

function discArea(state: RotorState): number {
  return (Math.PI / 4) * state.diameter ** 2;
}

function dynamicPressure(state: RotorState, u: number): number {
  return 0.5 * requirePositive("air.density", state.density) * u * u;
}
