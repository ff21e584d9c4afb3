import { marginWorking } from "../../../shared/physics/marginWorking.ts";
import { SettingField } from "../../ui/SettingField.tsx";
import { useSaid } from "../../ui/useSaid.ts";
import { Worked } from "../../ui/working/Worked.tsx";
import { boardNow } from "../../ui/working/WorkedFigure.tsx";
import { degrees, standSentence } from "./attitudeWords.ts";
import { INCLINATION } from "./ownAttitudes.ts";
import type { Rose } from "./rose.ts";
import { standAt } from "./stand.ts";

export interface AskAngleProps {
  readonly rose: Rose;
  /** [°] */
  readonly angle: number;
  readonly onAngle: (angle: number) => void;
}

const STEP = 0.5;

/** What about another angle: a handle, a number, and the answer in words. */
export function AskAngle({ rose, angle, onAngle }: AskAngleProps) {
  const stand = standAt(rose.input.vehicle, rose.pull, angle);
  const said = standSentence(stand, rose.made);
  useSaid(said);
  const working = marginWorking(rose.input, rose.pull, angle);
  return (
    <section class="attitude-ask" aria-label="Another angle">
      <h2>What about another angle?</h2>
      <SettingField
        label="Inclination"
        spec={INCLINATION}
        value={angle}
        shown={degrees(angle).slice(0, -1)}
        slider={{ min: 0, max: 180, step: STEP }}
        onValue={onAngle}
      />
      <div class="attitude-asked">{said}</div>
      {working && (
        <p>
          <Worked of={async () => ({ working, board: await boardNow() })} what={working.title}>
            Show working
          </Worked>
        </p>
      )}
    </section>
  );
}
