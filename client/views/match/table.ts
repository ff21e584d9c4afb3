import { deviationOf } from "../../../shared/decide/spread.ts";
import type { Uncertainty } from "../../../shared/decide/uncertainty.ts";
import { inUnit } from "../../../shared/units/format.ts";
import { headed } from "../../../shared/units/showing.ts";
import { cavityPoint } from "../../state/outcome.ts";
import { type Cell, known, type Table } from "../../ui/table.ts";
import type { Picture } from "./picture.ts";

type Row = [curve: string, flow: Cell, pressure: Cell, pull: Cell, note: string];

/** The operating point's samples: flow and pressure each by itself. */
function sampledRows(spread: Uncertainty["point"]): Row[] {
  if (!spread) return [];
  return (["p5", "p50", "p95"] as const).flatMap((key): Row[] => {
    const [flow, pressure] = [spread.flow[key], spread.pressure[key]];
    if (flow === null || pressure === null) return [];
    const percent = key.slice(1);
    return [
      [
        `operating point, ${percent} % of samples`,
        known(inUnit(flow, "flow"), inUnit(deviationOf(spread.flow), "flow")),
        known(inUnit(pressure, "pressure"), inUnit(deviationOf(spread.pressure), "pressure")),
        null,
        "flow and pressure each by itself",
      ],
    ];
  });
}

/** @returns what Match draws, as numbers: each curve's points, the operating point, the levels, the readings */
export function pictureTable(
  { curves, levels, measured, outcome }: Picture,
  spread: Uncertainty["point"] = null,
): Table {
  const factor = outcome.pullPerPascal;
  const point = cavityPoint(outcome);
  const pull = (pressure: number) => (factor === null ? null : inUnit(pressure * factor, "load"));
  const row = (curve: string, flow: number | null, pressure: number, note = ""): Row => [
    curve,
    flow === null ? null : inUnit(flow, "flow"),
    inUnit(pressure, "pressure"),
    pull(pressure),
    note,
  ];
  /** With the digits that the samples leave it. */
  const settled = ({ flow, pressure, extrapolated }: NonNullable<typeof point>): Row => {
    const to = spread && { flow: deviationOf(spread.flow), pressure: deviationOf(spread.pressure) };
    const made = pull(pressure);
    return [
      "operating point",
      known(inUnit(flow, "flow"), to && inUnit(to.flow, "flow")),
      known(inUnit(pressure, "pressure"), to && inUnit(to.pressure, "pressure")),
      made === null ? null : known(made, to && pull(to.pressure)),
      extrapolated ? "extrapolated" : "",
    ];
  };
  const fan = (name: string, points: Picture["curves"]["rest"]) =>
    points.map((point) => row(name, point.flow, point.pressure, point.extrapolated ? "extrapolated" : ""));
  const leak = (name: string, points: Picture["curves"]["leak"]) =>
    points.map((point) => row(name, point.flow, point.pressure));
  return {
    columns: ["what", headed("flow", "flow"), headed("suction", "pressure"), headed("pull", "load"), "note"],
    rows: [
      ...(point ? [settled(point)] : []),
      ...sampledRows(spread),
      ...levels.map((level) =>
        row(`needed: ${level.title} ${level.angle.toFixed(0)}°`, null, level.pressure),
      ),
      ...fan("rotor, charge shown", curves.rest),
      ...fan("rotor, full charge", curves.full),
      ...fan("rotor, end of charge", curves.cutOff),
      ...leak("leak", curves.leak),
      ...(curves.leakUncertainty
        ? [
            ...leak("leak, smaller gap", curves.leakUncertainty.less),
            ...leak("leak, larger gap", curves.leakUncertainty.more),
          ]
        : []),
      ...measured.map((each) =>
        row(
          "reading",
          each.flow,
          each.pressure,
          each.setAside === null ? each.read : `set aside; ${each.read}`,
        ),
      ),
    ],
  };
}
