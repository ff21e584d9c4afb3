import { NotEnoughDataError } from "../numeric/errors.ts";
import type { Air } from "../physics/air.ts";
import type { Note } from "../physics/note.ts";
import { type Holes, holeFlow, holeNotes } from "../physics/restriction/hole.ts";

export interface BleedRequest {
  /** kinds of hole that are open, each with how many */
  readonly holes: readonly Holes[];
  /** [Pa] */
  readonly pressure: number;
  readonly air: Pick<Air, "density" | "viscosity" | "pressure">;
  /** standard uncertainty of the pressure reading, 0 unless given [Pa] */
  readonly pressureUncertainty?: number;
}

export interface BleedFlow {
  /** [m³/s] */
  readonly flow: number;
  /** of all holes together, by area; 0 at no pressure [-] */
  readonly dischargeCoefficient: number;
  /** standard uncertainty of the flow, relative [-] */
  readonly uncertainty: number;
  readonly warnings: readonly Note[];
}

/**
 * Flow through a bleed plate from the pressure across it: the flow meter of the bench.
 *
 *     Q = Σ N·C_d·ε·(πd²/4)·√(2Δp/ρ),  u(Q)/Q = √[(Σ QᵢuᵢC/Q)² + (½·u(Δp)/Δp)²]
 *
 * @param request - open holes by kind [m]; pressure [Pa]; air [kg/m³, Pa·s, Pa]; uncertainty of the pressure [Pa]
 * @returns flow [m³/s], C_d of all holes together [-], relative standard uncertainty of the flow [-], notes
 * @throws {OutOfRangeError} on a hole or a pressure that can't be
 * @throws {NotEnoughDataError} on no holes at all
 *
 * Valid for holes several bores apart. The doubts of C_d count as fully shared between holes, since they come from one table; the ± of a hole is taken whole as a standard uncertainty.
 * Source: {@link holeFlow}; JCGM 100:2008 (GUM), 5.2.2
 */
export function bleedFlow(request: BleedRequest): BleedFlow {
  const { holes, pressure, air, pressureUncertainty = 0 } = request;
  if (holes.length === 0)
    throw new NotEnoughDataError("No hole of the plate is open.", "Open one or more holes.", "holes");
  const parts = holes.map((kind) => ({
    ...holeFlow(kind, air, pressure),
    area: kind.count * kind.diameter ** 2,
  }));
  const sum = (of: (part: (typeof parts)[number]) => number) =>
    parts.reduce((total, part) => total + of(part), 0);
  const flow = sum((part) => part.flow);
  const area = sum((part) => part.area);
  const shared = flow > 0 ? sum((part) => part.uncertainty * part.flow) / flow : 0;
  const ofReading = pressure > 0 ? (0.5 * pressureUncertainty) / pressure : 0;
  return {
    flow,
    dischargeCoefficient: area > 0 ? sum((part) => part.dischargeCoefficient * part.area) / area : 0,
    uncertainty: Math.hypot(shared, ofReading),
    warnings: holes.flatMap((kind) => holeNotes(kind, air, pressure)),
  };
}
