import { marginText, percentText } from "../../../shared/decide/verdict/figures.ts";
import { CELSIUS_ZERO } from "../../../shared/physics/constants.ts";
import { formatFixed, THIN_SPACE } from "../../../shared/units/format.ts";
import { chargeText } from "../../ui/chargeWords.ts";
import type { Answered } from "./answer.ts";
import { duration, volts } from "./rundownWords.ts";

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
    `${formatFixed(rpm, 0)}${THIN_SPACE}rpm${sample.pressure === null ? "" : `, ${formatFixed(sample.pressure, 0)}${THIN_SPACE}Pa`}`,
    ...(answered.winding === null
      ? []
      : [`winding ${formatFixed(sample.windingTemperature - CELSIUS_ZERO, 0)}${THIN_SPACE}°C`]),
  ];
}
