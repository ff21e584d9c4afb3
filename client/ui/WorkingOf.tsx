import type { Working as WorkingData } from "../../shared/physics/working.ts";
import { Working, type WorkingValue } from "./Working.tsx";
import { shownInWorking } from "./workingText.ts";

function entry({ symbol, meaning, value, unit }: WorkingData["values"][number]): WorkingValue {
  return { symbol, meaning, text: shownInWorking(value, unit) };
}

/** A working of the physics, its numbers with five digits in the screen's units. */
export function WorkingOf({ working }: { working: WorkingData }) {
  return (
    <Working
      title={working.title}
      equation={working.equation}
      values={working.values.map(entry)}
      result={shownInWorking(working.result.value, working.result.unit)}
      source={working.source}
    />
  );
}
