import { openCircuitVoltage } from "../shared/physics/pack.ts";
import { noiseSource } from "./noise.ts";
import { CELL_CURVE, PACKS } from "./truth.ts";

/** Charge between two readings [-]. */
const STEP = 0.05;
/** A rest after every so many readings under load. */
const REST_EVERY = 2;

/** An invented discharge: read under load at every twentieth of the charge, at rest at every tenth. */
function discharge(
  { normal, read }: ReturnType<typeof noiseSource>,
  pack: keyof typeof PACKS,
  date: string,
  load: number,
) {
  const { name, series, capacity, cellResistance } = PACKS[pack];
  // What the day gave is not quite what the label says.
  const given = capacity * (1 + 0.02 * normal());
  const row = (charge: number, current: number) => ({
    charge: { value: Math.round((1 - charge) * given), unit: "mAh" },
    voltage: {
      value: read(
        series * (openCircuitVoltage(CELL_CURVE, charge) - cellResistance * current),
        0.0004,
        series === 1 ? 0.001 : 0.01,
      ),
      unit: "V",
    },
    current: { value: current === 0 ? 0 : read(current, 0.005, 0.01), unit: "A" },
  });
  const count = Math.round(1 / STEP);
  const rows = Array.from({ length: count + 1 }, (_, i) => {
    const charge = Math.max(0, 1 - i * STEP);
    return i % REST_EVERY === 0 ? [row(charge, 0), row(charge, load)] : [row(charge, load)];
  }).flat();
  return {
    kind: "discharge",
    title: `${name}, rests at every tenth`,
    date,
    note: "Invented for the demo.",
    pack,
    across: "pack",
    end: "empty",
    instruments: { voltage: { percent: 0.1 }, current: { percent: 0.5 } },
    rows,
  };
}

/** Discharges of the packs that no demo build carries, from a noise of their own. */
export function discharges() {
  const noise = noiseSource(4311);
  return [
    discharge(noise, "one-cell-650", "2026-05-06", 2),
    discharge(noise, "three-cell-850", "2026-05-07", 6),
  ];
}
