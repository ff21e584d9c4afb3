import { useState } from "preact/hooks";
import type { StoredOf } from "../../../shared/model/record.ts";
import { isGood, readNumber } from "../../../shared/units/readNumber.ts";
import { saveBuild } from "../../state/saveBuild.ts";
import { TextField } from "../../ui/Field.tsx";
import { NumberField } from "../../ui/NumberField.tsx";
import { INCLINATION, nameProblem, withAttitude } from "./ownAttitudes.ts";

interface Problems {
  readonly name?: string | null;
  readonly angle?: string | null;
  readonly whole?: string | null;
}

/** Adds an attitude of the user's own to the build as it is stored. */
export function AddAttitude({ build }: { build: StoredOf<"builds"> }) {
  const [name, setName] = useState("");
  const [angle, setAngle] = useState("");
  const [problems, setProblems] = useState<Problems>({});
  const add = async (event: Event) => {
    event.preventDefault();
    const reading = readNumber(INCLINATION, angle);
    const wrongName = nameProblem(name, build.data.attitudes);
    if (!isGood(reading)) return setProblems({ name: wrongName, angle: reading.message });
    if (wrongName !== null) return setProblems({ name: wrongName });
    const whole = await saveBuild(build, withAttitude(build.data, { name, angle: reading.value }));
    setProblems({ whole });
    if (whole !== null) return;
    setName("");
    setAngle("");
  };
  return (
    <form class="attitude-add" onSubmit={(event) => void add(event)} noValidate>
      <h2>An attitude of your own</h2>
      <TextField
        label="Name"
        value={name}
        placeholder="Roof pane"
        error={problems.name}
        onChange={(text) => {
          setName(text);
          setProblems((before) => ({ ...before, name: null }));
        }}
      />
      <NumberField
        label="Degrees, 0 floor to 180 ceiling"
        spec={INCLINATION}
        text={angle}
        error={problems.angle}
        onText={(text) => {
          setAngle(text);
          setProblems((before) => ({ ...before, angle: null }));
        }}
      />
      <button type="submit">Add to the build</button>
      {problems.whole && (
        <span class="field-error" role="alert">
          {problems.whole}
        </span>
      )}
    </form>
  );
}
