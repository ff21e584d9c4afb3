import { useState } from "preact/hooks";
import { marginWorking } from "../../../shared/physics/marginWorking.ts";
import { TextField } from "../../ui/Field.tsx";
import { WorkingOf } from "../../ui/WorkingOf.tsx";
import { readAngle } from "./ownAttitudes.ts";
import type { Rose } from "./rose.ts";
import { standAt } from "./stand.ts";
import { degrees, standSentence } from "./words.ts";

export interface AskAngleProps {
  readonly rose: Rose;
  /** [°] */
  readonly angle: number;
  readonly onAngle: (angle: number) => void;
}

const STEP = 0.5;

/** What about another angle: a handle, a number, and the answer in words. */
export function AskAngle({ rose, angle, onAngle }: AskAngleProps) {
  const [draft, setDraft] = useState<string | null>(null);
  const entry = draft === null ? null : readAngle(draft);
  const stand = standAt(rose.input.vehicle, rose.pull, angle);
  const working = marginWorking(rose.input, rose.pull, angle);
  const type = (text: string) => {
    setDraft(text);
    const read = readAngle(text);
    if ("angle" in read) onAngle(read.angle);
  };
  return (
    <section class="attitude-ask" aria-label="Another angle">
      <h2>What about another angle?</h2>
      <TextField
        label="Inclination, °"
        value={draft ?? degrees(angle).slice(0, -1)}
        error={entry && "problem" in entry ? entry.problem : null}
        onChange={type}
      />
      <input
        type="range"
        aria-label="Inclination, slider"
        aria-valuetext={degrees(angle)}
        min={0}
        max={180}
        step={STEP}
        value={angle}
        onInput={(event) => {
          setDraft(null);
          onAngle(event.currentTarget.valueAsNumber);
        }}
      />
      <output class="attitude-asked">{standSentence(stand, rose.made)}</output>
      {working && <WorkingOf working={working} />}
    </section>
  );
}
