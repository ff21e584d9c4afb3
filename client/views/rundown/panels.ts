import { CELSIUS_ZERO } from "../../../shared/physics/constants.ts";
import type { Sample } from "../../../shared/physics/rundown.ts";
import type { Answered } from "./answer.ts";

/** One of the small charts under the margins. */
export interface Panel {
  readonly key: string;
  /** quantity and unit */
  readonly label: string;
  readonly value: (sample: Sample) => number;
}

const THOUSAND = 1000;

/** @returns the small charts of a run; the winding's only where its temperature is known, the cavity's only where there is one */
export function panelsOf({ winding, windingEstimated, samples }: Answered): Panel[] {
  const voltage: Panel = {
    key: "voltage",
    label: "pack voltage under load, V",
    value: (sample) => sample.packVoltage,
  };
  const speed: Panel = {
    key: "speed",
    label: "rotor speed, 1000 rpm",
    value: (sample) => sample.rpm / THOUSAND,
  };
  const temperature: Panel = {
    key: "winding",
    label: `winding temperature, °C${windingEstimated ? " (estimated)" : ""}`,
    value: (sample) => sample.windingTemperature - CELSIUS_ZERO,
  };
  const pressure: Panel = {
    key: "pressure",
    label: "depression in the cavity, Pa",
    value: (sample) => sample.pressure ?? 0,
  };
  const cavity = samples.some((sample) => sample.pressure !== null) ? [pressure] : [];
  return [voltage, speed, ...cavity, ...(winding === null ? [] : [temperature])];
}
