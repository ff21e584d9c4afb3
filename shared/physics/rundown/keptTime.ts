import { integral, PANEL, TOLERANCE } from "../../numeric/integral.ts";
import { findRoot } from "../../numeric/root.ts";
import type { CellPieces } from "./cellPieces.ts";
import type { CellInput } from "./input.ts";
import { type KeptCircuit, type KeptState, keptDuty, voltageTaken } from "./throttled.ts";

/** What a controller keeps turning, and the pack that it takes it from. */
export interface KeptLoad {
  readonly circuit: KeptCircuit;
  readonly state: KeptState;
  readonly pack: {
    readonly series: number;
    readonly parallel: number;
    /** [Ω] */
    readonly wireResistance: number;
    readonly cell: Pick<CellInput, "capacity" | "minimumVoltage" | "resistance">;
  };
}

/** I_pack at an open-circuit voltage of one cell, where it is kept [A]. */
function drawnAt({ circuit, state, pack }: KeptLoad, cellVoltage: number): number {
  const voltage = pack.series * cellVoltage;
  const { packResistance, supply } = circuit;
  // A rounding below the last voltage the two roots are one.
  const double = () => (voltage - packResistance * supply.auxCurrent) / (2 * packResistance * state.current);
  return (keptDuty(circuit, voltage, state) ?? double()) * state.current + supply.auxCurrent;
}

/** Open-circuit voltage of one cell below which even full throttle is too little, or no throttle does it [V]. */
function lostBelow({ circuit, state, pack }: KeptLoad): number {
  const square = circuit.packResistance * state.current;
  const needed = voltageTaken(circuit, state);
  // δ = 1 on the smaller root; where the root ends before, the pack's greatest power is what ends it.
  const free = needed >= square ? needed + square : 2 * Math.sqrt(needed * square);
  return (free + circuit.packResistance * circuit.supply.auxCurrent) / pack.series;
}

/** Open-circuit voltage of one cell at which it stands at its minimum under load [V]; -∞ where the suction is lost before. */
function emptyBelow({ circuit, state, pack }: KeptLoad): number {
  const { series, parallel, cell } = pack;
  const beforeWire = { ...circuit, packResistance: pack.wireResistance };
  const duty = keptDuty(beforeWire, series * cell.minimumVoltage, state);
  if (duty === null || duty > 1) return Number.NEGATIVE_INFINITY;
  const drawn = duty * state.current + circuit.supply.auxCurrent;
  const voltage = cell.minimumVoltage + (cell.resistance * drawn) / parallel;
  const kept = keptDuty(circuit, series * voltage, state);
  // On the larger root of the whole circuit it would draw more for the same: the controller never gets there.
  return kept !== null && kept < duty * (1 - SAME) ? Number.NEGATIVE_INFINITY : voltage;
}

/** Throttles closer than this are the same root [-]. */
const SAME = 1e-9;

/** Mean of 1/I_pack over a panel whose voltages are tabulated from `first` on [1/A]. */
function panelMean(load: KeptLoad, within: Float64Array, first: number): number {
  let sum = 0;
  for (let point = 0; point < PANEL.length; point++)
    sum += PANEL[point][1] / drawnAt(load, within[first + point]);
  return sum;
}

/** Panels of a piece: the whole, and its halves. */
const PANELS = 3;

/** ∫dz/I_pack down to a charge. Towards the pack's greatest power δ goes as the root of what is left: by its square, x² of the way, all is smooth [1/A]. */
function adaptive(load: KeptLoad, { curve }: CellPieces, from: number, end: number): number {
  const way = from - end;
  return integral((x) => (2 * x * way) / drawnAt(load, curve(end + x * x * way)), 0, 1);
}

/** ∫dz/I_pack over a whole piece [1/A]. */
function overPiece(load: KeptLoad, pieces: CellPieces, piece: number): number {
  const { charges, within } = pieces;
  const [from, to] = [charges[piece], charges[piece + 1]];
  const [whole, lower, upper] = Array.from({ length: PANELS }, (_, i) =>
    panelMean(load, within, (PANELS * piece + i) * PANEL.length),
  );
  const halves = 0.5 * (lower + upper);
  if (Math.abs(halves - whole) <= TOLERANCE * whole) return (from - to) * halves;
  return adaptive(load, pieces, from, to);
}

/** The same over the upper part of a piece, down to where its voltage has fallen to the last one [1/A]. */
function overPart(load: KeptLoad, pieces: CellPieces, piece: number, last: number): number {
  const { curve, charges } = pieces;
  const [from, to] = [charges[piece], charges[piece + 1]];
  const end = findRoot((z) => curve(z) - last, to, from).root;
  return end < from ? adaptive(load, pieces, from, end) : 0;
}

/**
 * How long a controller keeps a rotor turning as it does, from a charge on.
 *
 *     t = N_p·C·∫dz/(δ(V_oc(z))·I + I_aux), down to δ = 1, to V_oc − R_cell·I_pack/N_p = V_min, or to empty;  δ by {@link keptDuty}, I and ω one number
 *
 * @param pieces - of the cell's curve, from the charge down [-, V]
 * @param load - the circuit, the motor's current [A], speed [rad/s] and winding [Ω], the pack
 * @returns t [s]; 0 where even at the start it is too much
 *
 * Valid for a winding that is settled at every moment, or cold: current and resistance then stay. Source: charge balance; docs/method/run-down.md
 */
export function keptTime(pieces: CellPieces, load: KeptLoad): number {
  const last = Math.max(lostBelow(load), emptyBelow(load));
  const { charges, voltages } = pieces;
  let sum = 0;
  for (let piece = 0; piece + 1 < charges.length && voltages[piece] > last; piece++) {
    if (voltages[piece + 1] < last) {
      sum += overPart(load, pieces, piece, last);
      break;
    }
    sum += overPiece(load, pieces, piece);
  }
  return load.pack.parallel * load.pack.cell.capacity * sum;
}
