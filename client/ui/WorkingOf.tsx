import type { Working as WorkingData } from "../../shared/physics/working.ts";
import { Working, type WorkingValue } from "./Working.tsx";

const DIGITS = 5;
const [SMALL, LARGE] = [1e-3, 1e6];

/** Five digits, and powers of ten only where they are shorter. */
function shown(value: number, unit: string): string {
  const size = Math.abs(value);
  const plain = size === 0 || (size >= SMALL && size < LARGE);
  const text = plain ? String(Number(value.toPrecision(DIGITS))) : value.toExponential(DIGITS - 1);
  return unit === "" ? text : `${text}\u2009${unit}`;
}

function entry({ symbol, meaning, value, unit }: WorkingData["values"][number]): WorkingValue {
  return { symbol, meaning, text: shown(value, unit) };
}

/** A working of the physics, its numbers with five digits. */
export function WorkingOf({ working }: { working: WorkingData }) {
  return (
    <Working
      title={working.title}
      equation={working.equation}
      values={working.values.map(entry)}
      result={shown(working.result.value, working.result.unit)}
      source={working.source}
    />
  );
}
