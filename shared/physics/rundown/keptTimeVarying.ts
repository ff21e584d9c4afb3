import { type CellLaw, cellAt } from "../cells/cell.ts";
import { packAt } from "../point/machine.ts";
import type { KeptLoad } from "./keptTime.ts";
import { keptDuty } from "./throttled.ts";

/** Steps of charge. */
const STEPS = 256;
/** Halvings of the last step: to rounding. */
const HALVINGS = 40;

/** A pack whose cells' resistance goes with their charge. */
interface VaryingLoad extends Omit<KeptLoad, "pack"> {
  readonly pack: KeptLoad["pack"] & { readonly cell: KeptLoad["pack"]["cell"] & CellLaw };
}

/** I_pack at a charge [A]; null where it isn't kept any more: more than full throttle, no throttle, or a cell at its minimum. */
function drawnAt({ circuit, state, pack }: VaryingLoad, charge: number): number | null {
  const cell = cellAt(pack.cell, charge);
  const { openCircuitVoltage, packResistance } = packAt(pack, cell);
  const duty = keptDuty({ ...circuit, packResistance }, openCircuitVoltage, state);
  if (duty === null || duty > 1) return null;
  const drawn = duty * state.current + circuit.supply.auxCurrent;
  const loaded = cell.voltage - (cell.resistance * drawn) / pack.parallel;
  return loaded >= pack.cell.minimumVoltage ? drawn : null;
}

/**
 * How long a controller keeps a rotor turning as it does, from cells whose resistance goes with their charge.
 *
 *     t = N_p·C·∫dz/I_pack(z), I_pack from V_oc(z) and R_cell(z);  down to δ = 1, to V_min under load, or to empty
 *
 * @param load - the circuit, the motor's current [A], speed [rad/s] and winding [Ω], the pack
 * @param charge - z₀ [-], above 0
 * @returns t [s]; 0 where even at the start it is too much
 *
 * Valid within 0.1 % of a run-down that keeps it. Source: trapezoid rule; charge balance; docs/method/run-down.md
 */
export function keptTimeVarying(load: VaryingLoad, charge: number): number {
  const width = charge / STEPS;
  let sum = 0;
  let before = drawnAt(load, charge);
  if (before === null) return 0;
  for (let i = 1; i <= STEPS; i++) {
    const from = charge - (i - 1) * width;
    let way = Math.min(width, from);
    let now = drawnAt(load, from - way);
    const ends = now === null;
    if (ends) {
      let [kept, lost] = [0, way];
      for (let k = 0; k < HALVINGS; k++) {
        const middle = (kept + lost) / 2;
        if (drawnAt(load, from - middle) === null) lost = middle;
        else kept = middle;
      }
      way = kept;
      now = drawnAt(load, from - kept);
    }
    sum += (way * (1 / before + 1 / (now ?? before))) / 2;
    if (ends || now === null) break;
    before = now;
  }
  return load.pack.parallel * load.pack.cell.capacity * sum;
}
