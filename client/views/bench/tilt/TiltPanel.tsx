import { useState } from "preact/hooks";
import { type Rest, tiltOf } from "../../../../shared/fit/tilt.ts";
import { formatPlain, inUnit } from "../../../../shared/units/format.ts";
import { Problem } from "../../../ui/Problem.tsx";
import { Status } from "../../../ui/Status.tsx";
import { change, type FormModel, leave, typeField } from "../forms/model.ts";
import { tiltWords, withHeld, withSlid } from "./rows.ts";
import { useGravity } from "./useGravity.ts";

/** A phone that moves feels more than gravity: so much more or less is no rest [-]. Judgement. */
const MOVING = 0.03;
/** A direction that scatters by more is no rest either [rad]. Judgement. */
const SHAKING = 0.01;

const lengthOf = ({ gravity }: Rest): number => Math.hypot(...gravity);

const isStill = (level: Rest, now: Rest): boolean =>
  Math.abs(lengthOf(now) / lengthOf(level) - 1) < MOVING && now.scatter < SHAKING;

/** What the angle is uncertain by goes beside the instruments where nothing is stated there. */
function state(form: FormModel, uncertainty: number): void {
  const { fields } = form.draft.value;
  const isStated = ["", ".percent", ".absolute"].some((end) => fields[`instruments.angle${end}`]);
  if (isStated) return;
  typeField(form, "instruments.angle.absolute", `${formatPlain(inUnit(uncertainty, "angle"), 1)} °`);
}

/** The phone on the tilt board as the instrument: zeroed on the level board, held and slid by one button each. */
export default function TiltPanel({ form }: { readonly form: FormModel }) {
  const { rest, problem, isOn, start } = useGravity();
  const [level, setLevel] = useState<Rest | null>(null);
  return (
    <div class="tilt">
      {!isOn && (
        <p>
          <button type="button" onClick={() => void start()}>
            Read this phone&apos;s tilt
          </button>
        </p>
      )}
      {problem && <Problem message={problem} />}
      {isOn && !rest && !problem && <Status>Waiting for the sensor…</Status>}
      {rest && (
        <p class="bench-buttons">
          <button type="button" onClick={() => setLevel(rest)} disabled={rest.scatter > SHAKING}>
            {level ? "Zero again on the level board" : "Zero on the level board"}
          </button>
        </p>
      )}
      {rest && !level && (
        <p class="quiet">Lay the phone on the board as it will lie, the board level, then zero.</p>
      )}
      {rest && level && <Tilted form={form} level={level} now={rest} />}
    </div>
  );
}

function Tilted({
  form,
  level,
  now,
}: {
  readonly form: FormModel;
  readonly level: Rest;
  readonly now: Rest;
}) {
  const { tilt, uncertainty } = tiltOf(level, now);
  const still = isStill(level, now);
  const take = (outcome: typeof withHeld, column: "held" | "slid") => {
    const { draft, key } = outcome(form.draft.value, tilt);
    change(form, draft, `rows.${key}.${column}`);
    leave(form, `rows.${key}.${column}`);
    state(form, uncertainty);
  };
  return (
    <>
      <Status class="tilt-angle">
        <strong>{tiltWords(tilt)}</strong>
        {!still && <span class="quiet"> moving</span>}
      </Status>
      <p class="bench-buttons">
        <button type="button" class="primary tilt-button" onClick={() => take(withHeld, "held")}>
          Held at {tiltWords(tilt)}
        </button>
        <button type="button" class="primary tilt-button" onClick={() => take(withSlid, "slid")}>
          Slid at {tiltWords(tilt)}
        </button>
      </p>
    </>
  );
}
