import type { Note } from "../note.ts";
import { landShare } from "../suction.ts";
import type { LeakAir } from "./law.ts";
import { lawOf, type Restriction } from "./restriction.ts";

/** Everything that the air leaks through beside the rotor, side by side. None of it open: sealed. */
export type Leak = readonly Restriction[];

/** @returns whether nothing passes at any pressure */
export function isSealed(leak: Leak): boolean {
  return !leak.some((each) => lawOf(each).isOpen(each));
}

/**
 * Flow through everything that leaks.
 *
 *     Q(Δp) = Σ Qᵢ(Δp)
 *
 * @param leak - the restrictions, SI
 * @param air - density [kg/m³], viscosity [Pa·s], ambient pressure where holes ask for it [Pa]
 * @param pressure - Δp of the cavity [Pa], ≥ 0
 * @returns Q [m³/s]; 0 where it is sealed
 * @throws {OutOfRangeError} on a negative pressure, and as the law of each kind
 *
 * Valid where the paths do not disturb each other. Source: conservation of mass; docs/method/restriction.md
 */
export function leakFlow(leak: Leak, air: LeakAir, pressure: number): number {
  let flow = 0;
  for (const each of leak) flow += lawOf(each).flow(each, air, pressure);
  return flow;
}

/**
 * Slope of the leak's law.
 *
 *     dQ/dΔp = Σ dQᵢ/dΔp
 *
 * @param leak - the restrictions, SI
 * @param air - density [kg/m³], viscosity [Pa·s], ambient pressure where holes ask for it [Pa]
 * @param pressure - Δp of the cavity [Pa], > 0
 * @returns dQ/dΔp [m³/(s·Pa)]; 0 where it is sealed
 * @throws {OutOfRangeError} as {@link leakFlow}
 *
 * Valid and source: as {@link leakFlow}
 */
export function leakSlope(leak: Leak, air: LeakAir, pressure: number): number {
  let slope = 0;
  for (const each of leak) slope += lawOf(each).slope(each, air, pressure);
  return slope;
}

/**
 * Mean share of the cavity's suction that acts under the lip's land, over all of its stretches.
 *
 *     σ_l = Σ Pᵢ·σᵢ/Σ Pᵢ,  σᵢ by {@link landShare}
 *
 * @param leak - the restrictions, SI
 * @param air - density [kg/m³], viscosity [Pa·s]
 * @param pressure - Δp of the cavity [Pa], ≥ 0
 * @returns σ_l [-]; that of a sealed lip where none of the leak is part of the lip
 * @throws {OutOfRangeError} as {@link leakFlow}
 *
 * Valid as {@link landShare}. Source: as there
 */
export function lipShare(leak: Leak, air: LeakAir, pressure: number): number {
  let [whole, shared] = [0, 0];
  for (const each of leak) {
    const { underLip } = lawOf(each);
    if (!underLip) continue;
    const length = underLip.length(each);
    whole += length;
    shared += length * landShare(pressure, underLip.frictionDrop(each, air, pressure));
  }
  return whole > 0 ? shared / whole : landShare(pressure, null);
}

/** @returns how the share of {@link lipShare} comes about, an equation for each stretch of the lip */
export function lipShareWords(leak: Leak): string {
  const stretches = leak.flatMap((each) => {
    const { underLip, isOpen } = lawOf(each);
    return underLip && isOpen(each) ? [underLip.shareWords(each)] : [];
  });
  if (stretches.length === 0) return "σ = ½, as nothing passes under the lip";
  return stretches.length === 1 ? stretches[0] : `σ the mean by length of ${stretches.join(" and ")}`;
}

/** @returns what to know about each restriction outside the range of its sources, at a pressure [Pa] */
export function leakNotes(leak: Leak, air: LeakAir, pressure: number): Note[] {
  return leak.flatMap((each) => lawOf(each).notes?.(each, air, pressure) ?? []);
}
