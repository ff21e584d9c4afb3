import type { Quantiles } from "../../../../shared/decide/uncertainty.ts";
import { inUnit } from "../../../../shared/units/format.ts";
import { headed } from "../../../../shared/units/showing.ts";
import type { Table } from "../../../ui/table.ts";
import type { ThrustPicture } from "./picture.ts";

const CHARGES = { full: "full charge", rest: "charge shown", cutOff: "end of charge" } as const;

type Row = [what: string, rpm: number | null, force: number, pull: number, note: string];

/** @returns what the picture draws, as numbers: where it settles, the forces needed, the curve, the readings */
export function thrustTable(
  { marks, levels, curve, measured }: ThrustPicture,
  spread: Quantiles | null = null,
): Table {
  const row = (what: string, speed: number | null, force: number, note = ""): Row => [
    what,
    speed === null ? null : inUnit(speed, "speed"),
    force,
    inUnit(force, "load"),
    note,
  ];
  const rest = marks.find((mark) => mark.key === "rest");
  const sampled = (["p5", "p50", "p95"] as const).flatMap((key) => {
    const force = spread?.[key] ?? null;
    return rest && force !== null
      ? [row(`charge shown, ${key.slice(1)} % of samples`, rest.speed, force)]
      : [];
  });
  const beyond = (extrapolated: boolean) => (extrapolated ? "extrapolated" : "");
  return {
    columns: ["what", headed("speed", "speed"), "thrust, N", headed("pull", "load"), "note"],
    rows: [
      ...marks.map((mark) => row(CHARGES[mark.key], mark.speed, mark.thrust, beyond(mark.extrapolated))),
      ...sampled,
      ...levels.map((level) =>
        row(`needed: ${level.title} ${level.angle.toFixed(0)}°`, null, level.pressure),
      ),
      ...curve.map((point) => row("propeller", point.speed, point.thrust, beyond(point.extrapolated))),
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
