import { OutOfRangeError, requireNonNegative, requirePositive } from "../../numeric/errors.ts";

/** Least factor on speed for a printed rotor, four in stress: layers, notches and heat each take a share. Common practice, no source. */
export const LEAST_SPEED_FACTOR = 2;

/** The plate that carries a rotor's blades, of even thickness. */
export interface Disc {
  /** r_o [m] */
  readonly outerRadius: number;
  /** r_i of the hole for the shaft; 0: none [m] */
  readonly boreRadius: number;
  /** ρ_m of the printed material [kg/m³] */
  readonly density: number;
  /** ν [-] */
  readonly poisson: number;
}

/** Blades hung onto the disc's rim. */
export interface RimLoad {
  /** of all blades together [kg] */
  readonly bladeMass: number;
  /** of the blades' centre of gravity [m] */
  readonly bladeRadius: number;
  /** of the disc at its rim [m] */
  readonly rimThickness: number;
}

/**
 * Largest stress in a turning disc, the hoop stress at its bore or its centre.
 *
 *     bore: (ρω²/4)[(3 + ν)r_o² + (1 − ν)r_i²];  no bore: (3 + ν)/8·ρω²r_o²
 *
 * @param disc - radii [m], density [kg/m³], Poisson's ratio [-]
 * @param speed - ω [rad/s], ≥ 0
 * @returns σ_max [Pa]; a pin hole doubles it
 * @throws {OutOfRangeError} on a disc that can't be, a negative or non-finite speed
 *
 * Valid for a thin, even, elastic disc (plane stress). Printed layers are weaker across than along. Source: Timoshenko & Goodier, Theory of Elasticity, art. 32
 */
export function discStress(disc: Disc, speed: number): number {
  const { outerRadius, boreRadius, density, poisson } = checkDisc(disc);
  const load = density * requireNonNegative("speed", speed) ** 2;
  if (boreRadius === 0) return ((3 + poisson) / 8) * load * outerRadius ** 2;
  return (load / 4) * ((3 + poisson) * outerRadius ** 2 + (1 - poisson) * boreRadius ** 2);
}

/**
 * Stress that the blades add where the disc's stress is largest.
 *
 *     q = m_b·ω²·r_b/(2π·r_o·t);  bore: 2q·r_o²/(r_o² − r_i²);  no bore: q
 *
 * @param disc - radii [m], density [kg/m³], Poisson's ratio [-]
 * @param rim - mass of all blades [kg], radius of their centre of gravity and thickness of the rim [m]
 * @param speed - ω [rad/s], ≥ 0
 * @returns added stress [Pa]
 * @throws {OutOfRangeError} on a disc or a rim that can't be, a negative or non-finite speed
 *
 * Valid for blades spread evenly around the rim that stiffen nothing. Source: Lamé's ring under even pull; Timoshenko & Goodier, Theory of Elasticity, art. 28
 */
export function rimStress(disc: Disc, rim: RimLoad, speed: number): number {
  const { outerRadius, boreRadius } = checkDisc(disc);
  requireNonNegative("rotor.bladeMass", rim.bladeMass);
  requireNonNegative("rotor.bladeRadius", rim.bladeRadius);
  requirePositive("rotor.rimThickness", rim.rimThickness);
  const pull = rim.bladeMass * requireNonNegative("speed", speed) ** 2 * rim.bladeRadius;
  const traction = pull / (2 * Math.PI * outerRadius * rim.rimThickness);
  if (boreRadius === 0) return traction;
  return (2 * traction * outerRadius ** 2) / (outerRadius ** 2 - boreRadius ** 2);
}

/**
 * Stress of disc and blades together.
 *
 *     σ = σ_disc + σ_rim
 *
 * @param disc - radii [m], density [kg/m³], Poisson's ratio [-]
 * @param rim - blades at its rim; null: none [kg, m]
 * @param speed - ω [rad/s], ≥ 0
 * @returns σ [Pa]
 * @throws {OutOfRangeError} as {@link discStress} and {@link rimStress}
 *
 * Valid as its parts. Source: superposition
 */
export function rotorStress(disc: Disc, rim: RimLoad | null, speed: number): number {
  return discStress(disc, speed) + (rim === null ? 0 : rimStress(disc, rim, speed));
}

/**
 * How many times faster the rotor could turn before its strength is reached.
 *
 *     √(strength/σ)
 *
 * @param strength - of the material across its printed layers [Pa], > 0
 * @param stress - σ at the speed in question [Pa], ≥ 0
 * @returns factor on speed [-]; infinite at rest
 * @throws {OutOfRangeError} on a strength that is not above 0, a negative stress
 *
 * Valid for brittle failure at the largest stress; no fatigue, no creep. Source: stress grows with ω²
 */
export function speedFactor(strength: number, stress: number): number {
  return Math.sqrt(requirePositive("rotor.strength", strength) / requireNonNegative("stress", stress));
}

/**
 * Speed at which the rotor reaches its strength.
 *
 *     ω_max = ω·√(strength/σ(ω))
 *
 * @param disc - radii [m], density [kg/m³], Poisson's ratio [-]
 * @param rim - blades at its rim; null: none [kg, m]
 * @param strength - of the material across its printed layers [Pa], > 0
 * @returns ω_max [rad/s]
 * @throws {OutOfRangeError} as {@link rotorStress}, {@link speedFactor}
 *
 * Valid as {@link speedFactor}. Source: as there
 */
export function burstSpeed(disc: Disc, rim: RimLoad | null, strength: number): number {
  return speedFactor(strength, rotorStress(disc, rim, 1));
}

function checkDisc(disc: Disc): Disc {
  requirePositive("rotor.outerRadius", disc.outerRadius);
  requirePositive("rotor.materialDensity", disc.density);
  if (!(disc.boreRadius >= 0 && disc.boreRadius < disc.outerRadius))
    throw new OutOfRangeError("rotor.boreRadius", disc.boreRadius, `0 to below ${disc.outerRadius}`);
  if (!(disc.poisson >= 0 && disc.poisson <= 0.5))
    throw new OutOfRangeError("rotor.poisson", disc.poisson, "0 to 0.5");
  return disc;
}
