import { useState } from "preact/hooks";
import { listed } from "../../../shared/decide/verdict/attitudeWords.ts";
import { formatFixed, formatQuantity } from "../../../shared/units/format.ts";
import { labelWithUnit } from "../../../shared/units/shown.ts";
import { NumberField } from "../../ui/NumberField.tsx";
import { degrees, grams } from "./attitudeWords.ts";
import { type Climber, type DriveAnswer, driveAnswer, type Load, type Slips, slipsOf } from "./driving.ts";
import { DRIVE_ENTRIES, type DriveTexts, readDrive } from "./typedDrive.ts";

/** Does the drive climb? Typed here for a look; the build does not keep it. */
export function DrivePanel({ climber }: { climber: Climber }) {
  const [texts, setTexts] = useState<DriveTexts>({});
  const { drive, stall, problems, missing } = readDrive(texts);
  return (
    <details class="attitude-drive">
      <summary>Torque to climb</summary>
      <p class="quiet small">For a look only: what is typed here is not kept with the build.</p>
      {DRIVE_ENTRIES.map((entry) => (
        <NumberField
          key={entry.key}
          label={labelWithUnit(entry.label, entry)}
          spec={entry}
          text={texts[entry.key] ?? ""}
          error={problems.get(entry.key)}
          onText={(text) => setTexts((before) => ({ ...before, [entry.key]: text }))}
        />
      ))}
      <div class="attitude-drive-said">
        {drive ? (
          <Climb made={climber.made} answer={driveAnswer(climber, drive, stall)} />
        ) : (
          <NoDrive climber={climber} missing={missing} />
        )}
      </div>
    </details>
  );
}

/** What can be said of a vehicle whose drive isn't known, and what is missing for the rest. */
function NoDrive({ climber, missing }: { climber: Climber; missing: readonly string[] }) {
  return (
    <>
      <p>
        The torque to climb can't be said: of this vehicle's drive, {listed(missing)}{" "}
        {missing.length > 1 ? "are" : "is"} missing. With {missing.length > 1 ? "them" : "it"} typed, the
        torque and the gear that would do stand here.
      </p>
      <SlipText made={climber.made} slips={slipsOf(climber)} />
    </>
  );
}

/** Where the wheels slip hangs on their friction and the pull alone. */
function SlipText({ made, slips }: { made: number; slips: Slips }) {
  if (slips === "unknown")
    return (
      <p>Where the wheels slip isn't known, as their friction isn't: tilt the vehicle until it slides.</p>
    );
  if (slips === "none") return <p class="good">The wheels grip at every angle, whatever drives them.</p>;
  return (
    <p class="bad">
      The wheels slip from {slips.from}° to {slips.to}°: climbing there takes more than the {grams(made)} of
      pull that it makes. No gear helps.
    </p>
  );
}

function loadText({ angle, torque, share }: Load): string {
  return `${formatQuantity(torque, "torque")} a motor at ${degrees(angle)}, ${formatFixed(share * 100, 0)}\u202f% of stall`;
}

function Climb({ made, answer }: { made: number; answer: DriveAnswer }) {
  const { atWorst, hardest, enoughRatio, slips } = answer;
  return (
    <>
      {atWorst && <p>Where climbing needs most pull: {loadText(atWorst)}.</p>}
      <p class={hardest.flagged ? "bad" : "good"}>
        Hardest for the motors: {loadText(hardest)}.{" "}
        {hardest.flagged
          ? "That is above half of stall: the motors run hot and slow (common practice, no source)."
          : "That is up to half of stall, as is common practice."}
      </p>
      <p>
        A gear ratio of {formatFixed(enoughRatio, 1)} or more stays at half of stall, at the same efficiency.
      </p>
      <SlipText made={made} slips={slips} />
    </>
  );
}
