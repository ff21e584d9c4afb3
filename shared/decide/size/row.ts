import { chargeAt } from "../../physics/cells/cell.ts";
import type { Note } from "../../physics/note.ts";
import { WINDING_ALARM } from "../../physics/point/notes.ts";
import { windingResistance } from "../../physics/winding.ts";
import { formatDigits, formatFixed } from "../../units/format.ts";
import { hardestLimits } from "../limits/hardest.ts";
import type { LimitsInput } from "../limits/input.ts";
import type { Limit, LimitKey } from "../limits/limit.ts";
import { rotorFigures } from "../limits/rotor.ts";
import { temperaturePair } from "../verdict/figures.ts";
import { inlineCase } from "../verdict/inlineCase.ts";
import { ratingText } from "../verdict/ratingWords.ts";
import { bodyAt, isOpen } from "./build.ts";
import { holdTime } from "./holdTime.ts";
import { type Asked, type Wound, woundAt } from "./wound.ts";

type Does = Extract<Wound, { state: "does" }>;

/** One size of the family, and the winding that does it there. */
export interface SizeRow {
  /** D [m] */
  readonly diameter: number;
  /** F_s or thrust, the gap as set [N] */
  readonly pull: number;
  /** Δp; null with a propeller [Pa] */
  readonly pressure: number | null;
  /** Q; null with a propeller [m³/s] */
  readonly flow: number | null;
  /** Q·Δp: no fan does it with less; null with a propeller [W] */
  readonly airPower: number | null;
  /** φ; null with a propeller [-] */
  readonly phi: number | null;
  /** ω [rad/s]; null where it isn't known */
  readonly speed: number | null;
  /** [W] */
  readonly shaftPower: number | null;
  /** null where no winding does it [rpm/V] */
  readonly kv: number | null;
  /** R₂₀ [Ω] */
  readonly resistance: number | null;
  /** [A] */
  readonly motorCurrent: number | null;
  /** out of the pack, all loads included [A] */
  readonly packCurrent: number | null;
  /** V_b·I_b at the pack's terminals, all loads included [W] */
  readonly packPower: number | null;
  /** I²·R_m [W] */
  readonly windingHeat: number | null;
  /** settled; null where R_th isn't known [K] */
  readonly windingTemperature: number | null;
  /** speed at which it bursts over its own [-]; null where its material isn't known */
  readonly burstFactor: number | null;
  /** from a full cell down to the voltage that it is sized for [s]; null without a cell */
  readonly holdTime: number | null;
  /** beyond what was tested */
  readonly extrapolated: boolean;
  /** limits that it passes, at a full cell where the cell is known */
  readonly exceeds: readonly LimitKey[];
  readonly notes: readonly Note[];
}

function limitsInput({ allows, build: asked, cell }: Asked, { build }: Does, diameter: number): LimitsInput {
  const rotor = bodyAt(allows.rotor, asked.rotor.diameter, diameter);
  const { limits } = inlineCase(build, { ...allows, rotor, target: 1 });
  const charge = cell && chargeAt(cell, build.pack.openCircuitVoltage);
  if (!cell || !charge) return limits;
  const { series, parallel, wireResistance } = build.pack;
  const maxCurrent = allows.cell.maxCurrent ?? cell.maxCurrent;
  const minimumVoltage = allows.cell.minimumVoltage ?? cell.minimumVoltage;
  const pack = { series, parallel, wireResistance, cell: { ...cell, maxCurrent, minimumVoltage } };
  return { ...limits, build: { ...build, pack, startCharge: charge } };
}

/** A winding without a stated limit is held against common wire, as a verdict does. */
function isPassed({ key, value, limit, verdict }: Limit): boolean {
  if (key === "winding" && limit === null) return value !== null && value > WINDING_ALARM;
  return verdict === "beyond";
}

function passedNote(limit: Limit, atFull: boolean): Note {
  const at = atFull ? " at full charge" : "";
  if (limit.key === "winding") {
    const [settles, allowed] = temperaturePair(limit.value ?? Number.NaN, limit.limit ?? WINDING_ALARM);
    return { code: "winding", message: `The winding settles at ${settles}${at}; ${allowed} is its limit.` };
  }
  const text = ratingText(limit, atFull ? 1 : null);
  return { code: limit.key, message: `${text.charAt(0).toUpperCase()}${text.slice(1)}.` };
}

const EXTRAPOLATED: Note = {
  code: "extrapolated",
  message: "Beyond the flows that were tested: extrapolated.",
};

function doesRow(asked: Asked, diameter: number, wound: Does): SizeRow {
  const { build, motor, at } = wound;
  const { point } = at;
  const limits = limitsInput(asked, wound, diameter);
  const passed = hardestLimits(limits).limits.filter(isPassed);
  const atFull = limits.build.startCharge !== 1;
  const { windingTemperature, motorCurrent, extrapolated } = point;
  return {
    diameter,
    pull: at.suction,
    pressure: point.pressure,
    flow: point.flow,
    airPower: point.flow === null ? null : point.flow * point.pressure,
    phi: point.phi,
    speed: point.speed,
    shaftPower: point.shaftPower,
    kv: motor.kv,
    resistance: motor.resistance,
    motorCurrent,
    packCurrent: point.packCurrent,
    packPower: point.packVoltage * point.packCurrent,
    windingHeat: motorCurrent ** 2 * windingResistance(motor.resistance, windingTemperature),
    windingTemperature: build.motor.thermalResistance === null ? null : windingTemperature,
    burstFactor: rotorFigures(limits, point.speed).factor,
    holdTime: asked.cell && holdTime(build, asked.cell),
    extrapolated,
    exceeds: passed.map(({ key }) => key),
    notes: [...(extrapolated ? [EXTRAPOLATED] : []), ...passed.map((limit) => passedNote(limit, atFull))],
  };
}

const watts = (power: number) => `${formatDigits(power, 3)} W`;

/** Why no winding does it. */
function stopNote(wound: Exclude<Wound, Does>): Note {
  switch (wound.state) {
    case "short": {
      const { needed, most, cellVoltage } = wound.power;
      const message = `The motor would take ${watts(needed)}, and the pack gives at most ${watts(most)}: ${watts(needed - most)} are missing. From ${formatFixed(cellVoltage, 2)} V a cell on a winding does it.`;
      return { code: "power-missing", message };
    }
    case "runs-away": {
      const message =
        "Copper of this motor's strength finds no steady temperature at this torque: it heats without end. A stronger motor (a greater motor constant) does it.";
      return { code: "winding-runs-away", message };
    }
    case "no-torque": {
      const message =
        "The rotor's power curve is at 0 or below here, so its torque isn't known. Measure its power at this flow.";
      return { code: "no-torque", message };
    }
    case "gives-way": {
      const message =
        "The running gear lifts the lip so far that no winding of this motor brings the margin. Stiffer running gear, or a closer gap, does it.";
      return { code: "gap-gives", message };
    }
    default: {
      const message =
        "On this curve the rotor would settle at another point, stalled or past it: this size can't be relied on.";
      return { code: "settles-elsewhere", message };
    }
  }
}

function stoppedRow({ build, duty, pull }: Asked, diameter: number, wound: Exclude<Wound, Does>): SizeRow {
  const { speed, torque } = wound.turning;
  const turns = Number.isFinite(speed) && speed > 0;
  const tipArea = (Math.PI / 8) * diameter ** 3;
  const phi = duty && turns ? duty.flow / (tipArea * speed) : null;
  const { phiMin, phiMax } = isOpen(build.rotor) ? { phiMin: 0, phiMax: 0 } : build.rotor;
  const extrapolated = phi !== null && (phi < phiMin || phi > phiMax);
  return {
    diameter,
    pull,
    pressure: duty?.pressure ?? null,
    flow: duty?.flow ?? null,
    airPower: duty?.airPower ?? null,
    phi,
    speed: turns ? speed : null,
    shaftPower: turns && torque > 0 ? torque * speed : null,
    kv: null,
    resistance: null,
    motorCurrent: null,
    packCurrent: null,
    packPower: null,
    windingHeat: null,
    windingTemperature: null,
    burstFactor: null,
    holdTime: null,
    extrapolated,
    exceeds: [],
    notes: [stopNote(wound), ...(extrapolated ? [EXTRAPOLATED] : [])],
  };
}

/**
 * One size of a family: how it turns, which winding turns it, what that takes and what it passes.
 *
 *     as {@link woundAt}; limits as {@link hardestLimits}, minutes as {@link holdTime}
 *
 * @param asked - from {@link askedOf}, SI
 * @param diameter - D [m], > 0
 * @returns the row, SI (kv [rpm/V]); nulls and a note where no winding does it
 * @throws {OutOfRangeError} {NotEnoughDataError} as {@link woundAt}
 *
 * Valid and source: as its parts
 */
export function sizeRow(asked: Asked, diameter: number): SizeRow {
  const wound = woundAt(asked, diameter);
  return wound.state === "does" ? doesRow(asked, diameter, wound) : stoppedRow(asked, diameter, wound);
}
