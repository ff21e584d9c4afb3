import { type Holes, holeExpansibility, holeFlow } from "../physics/restriction/hole.ts";
import { frictionlessCoefficient, ISO_TERM_HELD_BELOW } from "../physics/restriction/holeCoefficient.ts";
import { type Row, subscript, type Working, workedOut } from "../physics/working.ts";
import { formatFixed, formatQuantity } from "../units/format.ts";
import { type BleedRequest, bleedFlow } from "./bleed.ts";

const SOURCE = "Idelchik; Lichtarowicz, Duggins & Markland (1965); ISO 5167-2; docs/method/restriction.md";

/** What the flow through a plate is called. */
export const PLATE_FLOW_TITLE = "flow through the plate";

/** @returns what the discharge coefficient of one kind of hole is called: "discharge coefficient of the 4.0 mm holes" */
export const coefficientTitle = (holes: Pick<Holes, "diameter">): string =>
  `discharge coefficient of ${namedHoles(holes)}`;

const namedHoles = ({ diameter }: Pick<Holes, "diameter">): string =>
  `the ${formatQuantity(diameter, "length", { digits: 2 })} holes`;

/** By how thick the plate is against the bore: the laws change at these t/d. */
const [THIN, THICK, TABLE_TO, LINE_FROM] = [0.5, 1, 1.4, 2];

const FRICTIONLESS = "C_f";
const THIN_LAW = "C_d = C_f + 0.000521(10^6/Re_d)^0.7,  Re_d = C_d·Re_h";
const LONG_LAW = "1/C_d = 1/C_f + (20/Re_h)(1 + 2.25t/d) − 0.005(t/d)/(1 + 7.5x²),  x = log(0.00015·Re_h)";

/** Which law gives C_d at which Reynolds number. */
function lawOf({ edge = "sharp", thickness, diameter }: Holes, reynolds: number): string {
  const ratio = thickness / diameter;
  const creeping = `C_d between its value at Re_d = 500 and creeping flow, √(Re_d/(12π))`;
  const thin = reynolds < ISO_TERM_HELD_BELOW ? creeping : THIN_LAW;
  if (edge === "rounded" || ratio >= THICK) return LONG_LAW;
  if (ratio <= THIN) return thin;
  return `C_d = (1 − w)·C_thin + w·C_long,  w = (t/d − 0.5)/0.5;  ${thin};  ${LONG_LAW}`;
}

function frictionlessLaw({ edge = "sharp", thickness, diameter }: Holes): string {
  if (edge === "rounded") return "C_f = 1/√(1 + K + τ·√(2K))";
  const ratio = thickness / diameter;
  if (ratio <= TABLE_TO) return "C_f = 1/√(1.5 + τ)";
  const line = "C_f = 0.827 − 0.0085t/d";
  return ratio >= LINE_FROM ? line : `C_f = 1/√(1.5 + τ) up to t/d = 1.4, ${line} beyond 2, joined between`;
}

const shapeOf = ({ diameter, thickness, edge = "sharp" }: Holes) => ({
  thicknessRatio: thickness / diameter,
  edge,
});

function frictionlessWorking(holes: Holes): Working {
  const { diameter, thickness } = holes;
  return workedOut(
    {
      title: `coefficient without friction of ${namedHoles(holes)}`,
      equation: frictionlessLaw(holes),
      output: [FRICTIONLESS, ""],
      source: SOURCE,
      assumptions: ["τ of t/d, and K of a rounded edge, by Idelchik's tables."],
    },
    [
      [["d", "bore", "m"], diameter],
      [["t", "plate where it is drilled", "m"], thickness],
    ],
    frictionlessCoefficient(shapeOf(holes)),
  );
}

/** C_d from the hole's shape and its Reynolds number; none where the plate has its own. */
function coefficientWorkings(holes: Holes, { air, pressure }: BleedRequest): Working[] {
  if (holes.dischargeCoefficient !== undefined) return [];
  const { edge = "sharp" } = holes;
  const through = holeFlow(holes, air, pressure);
  const frictionless = frictionlessWorking(holes);
  const cut =
    edge === "sharp" ? "Drilled clean, its edge left sharp." : "Its edge rounded, as deep as helps.";
  const known = formatFixed(100 * through.uncertainty, 0);
  const working = workedOut(
    {
      title: coefficientTitle(holes),
      equation: `${lawOf(holes, through.reynolds)};  Re_h = d·√(2Δp/ρ)/ν`,
      output: ["C_d", ""],
      source: SOURCE,
      assumptions: [cut, `Known to ±${known} % at this Reynolds number; log is to the base of 10.`],
    },
    [
      [[FRICTIONLESS, "coefficient without friction", ""], frictionless.result.value],
      ...frictionless.values.map(({ symbol, meaning, unit, value }): Row => [[symbol, meaning, unit], value]),
      [["Re_d", "Reynolds number of the bore", ""], through.reynolds],
      [["Δp", "across the plate", "Pa", "pressure"], pressure],
      [["ρ", "density of the air of the day", "kg/m³"], air.density],
      [["ν", "kinematic viscosity of the air", "m²/s"], air.viscosity / air.density],
    ],
    through.dischargeCoefficient,
  );
  return [working, frictionless];
}

function holeRows(holes: Holes, request: BleedRequest, mark: string): Row[] {
  const { dischargeCoefficient } = holeFlow(holes, request.air, request.pressure);
  const own = holes.dischargeCoefficient === undefined ? "" : ", the plate's own by calibration";
  return [
    [[`N${mark}`, "holes open", ""], holes.count],
    [[`d${mark}`, "their bore", "m"], holes.diameter],
    [[`C_d${mark}`, `their discharge coefficient${own}`, ""], dischargeCoefficient],
  ];
}

/** @returns what C_d of all open holes is called */
export const throughTitle = ({ holes }: Pick<BleedRequest, "holes">): string =>
  holes.length === 1 ? coefficientTitle(holes[0]) : "discharge coefficient of all holes together";

function togetherWorking(request: BleedRequest): Working[] {
  const { holes } = request;
  if (holes.length === 1) return [];
  const told = {
    title: throughTitle(request),
    equation: "C_d = Σ N·d²·C_d/Σ N·d²",
    output: ["C_d", ""] as const,
    source: SOURCE,
  };
  const rows = holes.flatMap((kind, i) => holeRows(kind, request, subscript(i + 1)));
  return [workedOut(told, rows, bleedFlow(request).dischargeCoefficient)];
}

/**
 * How the flow that a bleed plate meters came about, and the discharge coefficient of each kind of hole.
 *
 *     Q = Σ N·C_d·ε·(πd²/4)·√(2Δp/ρ)
 *
 * @param request - open holes by kind; pressure [Pa]; air: density [kg/m³], viscosity [Pa·s], ambient pressure [Pa]
 * @returns the workings [SI]
 * @throws whatever {@link bleedFlow} throws
 *
 * Valid as {@link bleedFlow}. Source: as {@link holeFlow}; docs/method/restriction.md
 */
export function bleedWorkings(request: BleedRequest): Working[] {
  const { holes, pressure, air } = request;
  const ambient = air.pressure ?? Number.NaN;
  const rows: Row[] = [
    ...holes.flatMap((kind, i) => holeRows(kind, request, holes.length > 1 ? subscript(i + 1) : "")),
    [["Δp", "across the plate", "Pa", "pressure"], pressure],
    [["ρ", "density of the air of the day", "kg/m³"], air.density],
    [["ε", "expansibility of the air", ""], holeExpansibility(pressure, ambient)],
  ];
  const flow = workedOut(
    {
      title: PLATE_FLOW_TITLE,
      equation: `Q = ${holes.length > 1 ? "Σ " : ""}N·C_d·ε·(πd²/4)·√(2Δp/ρ)`,
      output: ["Q", "m³/s"],
      source: SOURCE,
      assumptions: ["The holes are several bores apart."],
    },
    rows,
    bleedFlow(request).flow,
  );
  return [flow, ...togetherWorking(request), ...holes.flatMap((kind) => coefficientWorkings(kind, request))];
}
