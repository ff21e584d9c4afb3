import { limitsInput } from "../../../shared/book/limitsInput.ts";
import { motorBasis } from "../../../shared/book/motorBasis.ts";
import type { Book } from "../../../shared/book/resolve.ts";
import { runInput } from "../../../shared/book/runInput.ts";
import { type Family, familiesFor, type LeftOutFamily } from "../../../shared/book/size/families.ts";
import type { MotorFrame, SizeAllows, SizeBuild, WantedHold } from "../../../shared/decide/size/input.ts";
import { torqueConstant } from "../../../shared/physics/motor.ts";
import { openCircuitVoltage } from "../../../shared/physics/pack.ts";
import type { CellInput } from "../../../shared/physics/rundown.ts";
import type { Outcome } from "../../state/outcome.ts";
import type { Asked } from "./asked.ts";

/** What is asked of the sizes, all of it plain data: it goes to another thread. */
export interface Question {
  readonly build: Omit<SizeBuild, "rotor" | "rotorAt">;
  readonly families: readonly Family[];
  readonly allows: Omit<SizeAllows, "rotor">;
  readonly hold: WantedHold;
  readonly cell: CellInput;
  /** [m], rising */
  readonly diameters: readonly number[];
}

/** What stands in the fields. */
export interface Settings {
  readonly hold: WantedHold;
  readonly cellVoltage: number;
  readonly motor: string;
  /** [m] */
  readonly from: number;
  readonly to: number;
}

/** Sizes that are looked at beside the build's own unless asked for [-]. */
const [SMALLER, LARGER] = [0.7, 1.7];
/** Sizes are looked at in steps that can be printed [m], at least so many of them. */
const STEPS = [1e-4, 2e-4, 5e-4, 1e-3, 2e-3, 5e-3, 1e-2] as const;
const LEAST_SIZES = 36;
const SLACK = 1e-9;

/** @returns diameters from one to another in a round step [m]; none where they are reversed */
export function diametersOf({ from, to }: Pick<Settings, "from" | "to">): number[] {
  if (!(to > from)) return [];
  const step = [...STEPS].reverse().find((each) => (to - from) / each >= LEAST_SIZES) ?? STEPS[0];
  const [first, last] = [Math.ceil(from / step - SLACK), Math.floor(to / step + SLACK)];
  const most = Math.min(last - first + 1, 10 * LEAST_SIZES);
  return Array.from({ length: Math.max(0, most) }, (_, i) => Number(((first + i) * step).toFixed(6)));
}

/** Charge at whose voltage a size is wanted unless another is asked for: below, a cell falls fast. Common practice, no source. */
const CHARGE_LEFT = 0.2;

/** @returns what stands in the fields: as asked, else by the build on the screen */
export function settingsOf({ build, resolved }: Outcome, asked: Asked): Settings {
  const cell = resolved?.pack?.cell;
  return {
    hold: { angle: asked.angle ?? "worst", margin: asked.margin ?? build.targetMargin, mode: "driving" },
    cellVoltage: asked.cellVoltage ?? (cell ? openCircuitVoltage(cell.curve, CHARGE_LEFT) : 0),
    motor: asked.motor ?? build.motor,
    from: asked.from ?? round(SMALLER * build.diameter),
    to: asked.to ?? round(LARGER * build.diameter),
  };
}

const round = (diameter: number) => Math.round(diameter * 1000) / 1000;

function frameOf(book: Book, id: string): MotorFrame | null {
  const basis = motorBasis(book, id);
  if (!basis) return null;
  const { kv, resistance, frictionTorque, viscousTorque } = basis.constants;
  const motorConstant = torqueConstant(kv) / Math.sqrt(resistance);
  return { motorConstant, frictionTorque, viscousTorque, thermalResistance: basis.thermal.thermalResistance };
}

export interface Put {
  readonly question: Question;
  readonly leftOut: readonly LeftOutFamily[];
}

/** @returns the question that the fields put to the book; null where build or motor have no numbers yet */
export function questionOf(book: Book, outcome: Outcome, settings: Settings): Put | null {
  const { build, resolved } = outcome;
  const run = resolved && runInput(build, resolved);
  const motor = frameOf(book, settings.motor);
  const numbers = resolved && (resolved.input ?? resolved.propeller);
  if (!run || !numbers || !motor) return null;
  const { families, leftOut } = familiesFor(book, build);
  const { motor: allowed } = limitsInput(book, { ...build, motor: settings.motor }, run);
  const { cell } = run.pack;
  return {
    leftOut,
    question: {
      build: {
        air: numbers.air,
        supply: numbers.supply,
        vehicle: numbers.vehicle,
        skirt: "skirt" in numbers ? numbers.skirt : null,
        pack: { ...numbers.pack, openCircuitVoltage: settings.cellVoltage },
        motor,
      },
      families,
      // A motor's greatest voltage and current belong to the winding it has, not to the one that is looked for.
      allows: {
        motor: { ...allowed, ratedVoltage: null, maxCurrent: null },
        cell: { maxCurrent: cell.maxCurrent ?? null, minimumVoltage: cell.minimumVoltage },
      },
      hold: settings.hold,
      cell,
      diameters: diametersOf(settings),
    },
  };
}
