import { NotEnoughDataError, requireNonNegative } from "../numeric/errors.ts";
import type { Air } from "../physics/air.ts";
import type { Note } from "../physics/note.ts";
import { type Holes, holeFlow, holeNotes } from "../physics/restriction/hole.ts";

export interface BleedRequest {
  /** kinds of hole that are open, each with how many */
  readonly holes: readonly Holes[];
  /** across the plate [Pa] */
  readonly pressure: number;
  readonly air: Pick<Air, "density" | "viscosity" | "pressure">;
  /** standard uncertainty of the pressure reading, 0 unless given [Pa] */
  readonly pressureUncertainty?: number;
  /** relative standard uncertainty of a C_d that the caller gave, 0 unless given [-] */
  readonly calibrationUncertainty?: number;
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
 *     Q = Σ N·C_d·ε·(πd²/4)·√(2Δp/ρ),  u(Q)/Q = √[(Σ Qᵢuᵢ/Q)² + (½·u(Δp)/Δp)²]
 *
 * @param request - open holes by kind; pressure [Pa]; air: density [kg/m³], viscosity [Pa·s], ambient pressure [Pa]; uncertainties of reading [Pa] and calibration [-]
 * @returns flow [m³/s], C_d of all holes together [-], relative standard uncertainty of the flow [-], notes
 * @throws {OutOfRangeError} on a hole or a pressure that can't be
 * @throws {NotEnoughDataError} on no holes at all
 *
 * Valid for holes several bores apart. The uncertainties uᵢ of C_d count as fully shared between holes, since they come from one table; the ± of a hole is taken whole as a standard uncertainty.
 * Source: {@link holeFlow}; JCGM 100:2008 (GUM), 5.2.2
 */
export function bleedFlow(request: BleedRequest): BleedFlow {
  const { holes, pressure, air } = request;
  if (holes.length === 0) throw new NotEnoughDataError("No hole is given.", "Name the open holes.", "holes");
  const pressureUncertainty = requireNonNegative("pressureUncertainty", request.pressureUncertainty ?? 0);
  const calibration = requireNonNegative("calibrationUncertainty", request.calibrationUncertainty ?? 0);
  let flow = 0;
  let doubt = 0;
  let area = 0;
  let coefficientArea = 0;
  for (const [index, kind] of holes.entries()) {
    const through = holeFlow(kind, air, pressure, `holes.${index}`);
    const own = kind.dischargeCoefficient === undefined ? through.uncertainty : calibration;
    const kindArea = kind.count * kind.diameter ** 2;
    flow += through.flow;
    doubt += own * through.flow;
    area += kindArea;
    coefficientArea += through.dischargeCoefficient * kindArea;
  }
  const fromReading = pressure > 0 ? pressureUncertainty / (2 * pressure) : 0;
  return {
    flow,
    dischargeCoefficient: coefficientArea / area,
    uncertainty: flow > 0 ? Math.hypot(doubt / flow, fromReading) : 0,
    warnings: once(holes.flatMap((kind) => holeNotes(kind, air, pressure))),
  };
}

function once(notes: readonly Note[]): Note[] {
  return [...new Map(notes.map((note) => [note.message, note])).values()];
}
