import { CELSIUS_ZERO } from "../../../shared/physics/constants.ts";
import type { Table } from "../../ui/table.ts";
import type { Answered } from "./answer.ts";

const MINUTE = 60;

/** @returns what the Run-down draws, as numbers */
export function rundownTable({ samples, tracks, winding, kept }: Answered): Table {
  return {
    columns: [
      "time (min)",
      "charge (%)",
      ...(kept ? ["throttle (%)"] : []),
      "pack (V)",
      "cell (V)",
      "speed (rpm)",
      "pressure (Pa)",
      "pack current (A)",
      "winding (°C)",
      ...tracks.map((track) => `margin, ${track.title} ${track.angle.toFixed(0)}°`),
    ],
    rows: samples.map((sample, i) => [
      sample.time / MINUTE,
      sample.charge * 100,
      ...(kept ? [(sample.duty ?? 1) * 100] : []),
      sample.packVoltage,
      sample.cellVoltage,
      Math.round(sample.rpm),
      sample.pressure,
      sample.packCurrent,
      winding === null ? null : sample.windingTemperature - CELSIUS_ZERO,
      ...tracks.map((track) => track.margins[i]),
    ]),
  };
}
