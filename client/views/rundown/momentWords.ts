import { marginText, percentText } from "../../../shared/decide/verdict/figures.ts";
import { RPM } from "../../../shared/physics/motor.ts";
import { formatQuantity } from "../../../shared/units/format.ts";
import { chargeText } from "../../ui/chargeWords.ts";
import type { Answered } from "./answer.ts";
import { celsiusText, duration, volts } from "./rundownWords.ts";

const FALL = "fall ";
/** Speeds are shown to so many rpm. */
const RPM_STEP = 10;

function fallWords({ tracks }: Answered, key: string): string[] {
  const track = tracks.find((each) => each.key === key);
  const { time = null, packVoltage = null } = track?.holds ?? {};
  if (!track || time === null || packVoltage === null) return [];
  return [`${track.title} lets go after ${duration(time)}`, `pack ${volts(packVoltage)}`];
}

/** @returns what a moment of the run says of itself, a line each: a sample, or where an attitude lets go */
export function momentWords(answered: Answered, key: string): string[] {
  if (key.startsWith(FALL)) return fallWords(answered, key.slice(FALL.length));
  const i = Number(key);
  const sample = answered.samples[i];
  if (!sample) return [];
  const margins = answered.tracks.flatMap(({ title, angle, margins: all }) =>
    all[i] === null ? [] : [`${title} ${angle.toFixed(0)}° ${marginText(all[i])}`],
  );
  const rpm = Math.round(sample.rpm / RPM_STEP) * RPM_STEP;
  return [
    `After ${duration(sample.time)}, at ${chargeText(sample.charge)}`,
    ...margins,
    ...(answered.kept ? [`throttle ${percentText(sample.duty ?? 1)}`] : []),
    `pack ${volts(sample.packVoltage)}, a cell ${volts(sample.cellVoltage)}`,
    formatQuantity(rpm * RPM, "speed", { decimals: 0 }) +
      (sample.pressure === null ? "" : `, ${formatQuantity(sample.pressure, "pressure", { decimals: 0 })}`),
    ...(answered.winding === null ? [] : [`winding ${celsiusText(sample.windingTemperature)}`]),
  ];
}
