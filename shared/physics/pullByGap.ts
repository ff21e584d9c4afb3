import { type Assembly, assemble, type PredictInput, type PullingVehicle, suctionAt } from "./assembly.ts";
import { type Pull, pullOf, rideHeightOf, rigidPull } from "./hold/pull.ts";
import { type Crossing, crossingNear } from "./operatingPoint.ts";
import { type Followed, followCrossing } from "./point/follow.ts";
import { isSealed, type Leak } from "./restriction/leak.ts";
import { skirtAtGap, skirtLeak } from "./skirt.ts";
import { windingResistance } from "./winding.ts";

/** A crossing to begin from, with what else is known there [Ω, m³/s]; null where there is none at the gap as set. */
type Known =
  | (Pick<Crossing, "phi"> &
      Partial<Pick<Crossing, "windingResistance"> & Pick<Followed, "winding" | "slope">>)
  | null;

interface Place {
  readonly gap: number;
  readonly phi: number;
  readonly winding: number;
  /** change of leak less rotor flow with φ; 0: not known [m³/s] */
  readonly slope: number;
}

/** The place solved before whose gap is nearest. */
const nearest = (places: readonly Place[], gap: number): Place =>
  places.reduce((best, each) => (Math.abs(each.gap - gap) < Math.abs(best.gap - gap) ? each : best));

/** How far, relative to φ, a crossing may move between two gaps: where it is the only one, far. */
const [FAR, NEAR] = [0.8, 0.25];
/** Places at which a curve is looked at. */
const LOOKS = 16;

/**
 * Whether a curve meets any leak once at most up to a place.
 *
 *     φψ′ < ψ: any leak's line rises at least as fast as the flow
 *
 * @param psi - by rising powers of φ [-]
 * @param end - φ up to which it is looked at, in sixteen places [-]
 * @returns whether it does
 *
 * Valid where the speed hardly falls with the load. Source: docs/method/operating-point.md
 */
export function meetsOnce(psi: readonly number[], end: number): boolean {
  for (let i = 1; i <= LOOKS; i++) {
    const phi = (end * i) / LOOKS;
    let [value, rise] = [0, 0];
    for (let power = psi.length - 1; power >= 0; power--) {
      value = value * phi + psi[power];
      rise = rise * phi + power * psi[power];
    }
    if (!(rise < value)) return false;
  }
  return true;
}

function solvedNear({ machine }: Assembly, leak: Leak, from: Place, near: number): Followed | null {
  const start = { ...from, flow: 0, pressure: 0 };
  const found = { ...start };
  if (from.phi > 0 && !isSealed(leak) && followCrossing(machine, leak, start, found, near)) return found;
  const crossing = crossingNear(machine, leak, from.phi);
  return crossing && { ...crossing, winding: crossing.windingResistance, slope: 0 };
}

/**
 * Pull by the lip's stand-off, all else as it stands.
 *
 *     h → the crossing next to that of the nearest gap solved before → F_s
 *
 * @param input - skirt [m, m², -], pull factor [-] and jet [m², °]
 * @param assembly - machine, leak and air with the gap as set
 * @param known - the operating point with the gap as set
 * @returns function from a stand-off [m] to F_s, jet included [N]; 0 where there is no operating point
 * @throws {OutOfRangeError} on a gap below 0
 *
 * Valid while the crossing moves on without a leap, as it does where one crossing alone exists. Source: docs/method/holding.md
 */
export function suctionByGap(
  input: Pick<PredictInput, "skirt"> & { readonly vehicle: PullingVehicle },
  assembly: Assembly,
  known: Known,
): (gap: number) => number {
  const { air, machine } = assembly;
  const { phi = 0, windingResistance: warm = machine.motor.resistance, slope = 0 } = known ?? {};
  const winding = known?.winding ?? warm;
  const places: Place[] = [{ gap: input.skirt.gap, phi, winding, slope }];
  const near = meetsOnce(machine.rotor.psi, machine.phiEnd) ? FAR : NEAR;
  return (gap) => {
    const skirt = skirtAtGap(input.skirt, gap);
    const leak = skirtLeak(skirt, air);
    const found = solvedNear(assembly, leak, nearest(places, gap), near);
    if (!found) return 0;
    if (found.phi > 0) places.push({ gap, phi: found.phi, winding: found.winding, slope: found.slope });
    return suctionAt({ skirt, vehicle: input.vehicle }, { leak, air }, found.pressure, found.flow);
  };
}

/** What a prediction tells of its operating point. */
type Settled = Pick<Crossing, "phi" | "windingTemperature">;

const knownAt = ({ motor }: PredictInput, { phi, windingTemperature }: Settled) => ({
  phi,
  winding: windingResistance(motor.resistance, windingTemperature),
});

/**
 * The pull that a prediction of a ducted build holds with, for what is asked of it afterwards.
 *
 *     F_s as set, and F_s(h(N)) where the running gear gives
 *
 * @param input - what was predicted, SI
 * @param prediction - its operating point and pull [N]
 * @returns the pull [N]
 * @throws {OutOfRangeError} with the path of a number that can't be
 *
 * Valid and source: as {@link suctionByGap}
 */
export function pullAfter(
  input: PredictInput,
  { point, suction }: { readonly point: Settled | null; readonly suction: number },
): Pull {
  const rideHeight = rideHeightOf(input.vehicle, input.skirt.gap);
  return rideHeight
    ? pullOf(suction, rideHeight, suctionByGap(input, assemble(input), point && knownAt(input, point)))
    : rigidPull(suction);
}
