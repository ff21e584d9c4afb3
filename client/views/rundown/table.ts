import { RPM } from "../../../shared/physics/motor.ts";
import { inUnit } from "../../../shared/units/format.ts";
import { headed } from "../../../shared/units/showing.ts";
import type { Table } from "../../ui/table.ts";
import type { Answered } from "./answer.ts";

const MINUTE = 60;

/** @returns what the Run-down draws, as numbers */
export function rundownTable({ samples, tracks, winding, kept }: Answered): Table {
  return {
    columns: [
      "time, min",
      "charge, %",
      ...(kept ? ["throttle, %"] : []),
      "pack, V",
      "cell, V",
      headed("speed", "speed"),
      headed("suction", "pressure"),
      "pack current, A",
      headed("winding", "temperature"),
      ...tracks.map((track) => `margin, ${track.title} ${track.angle.toFixed(0)}°`),
    ],
    rows: samples.map((sample, i) => [
      sample.time / MINUTE,
      sample.charge * 100,
      ...(kept ? [(sample.duty ?? 1) * 100] : []),
      sample.packVoltage,
      sample.cellVoltage,
      inUnit(Math.round(sample.rpm) * RPM, "speed"),
      sample.pressure === null ? null : inUnit(sample.pressure, "pressure"),
      sample.packCurrent,
      winding === null ? null : inUnit(sample.windingTemperature, "temperature"),
      ...tracks.map((track) => track.margins[i]),
    ]),
  };
}
