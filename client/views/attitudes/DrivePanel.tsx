import { useState } from "preact/hooks";
import { listed } from "../../../shared/decide/verdict/attitudeWords.ts";
import type { Drive } from "../../../shared/physics/hold/drive.ts";
import { formatFixed, formatQuantity, fromUnit } from "../../../shared/units/format.ts";
import { parseNumber } from "../../../shared/units/number.ts";
import { TextField } from "../../ui/Field.tsx";
import { type Climber, type DriveAnswer, driveAnswer, type Load, type Slips, slipsOf } from "./driving.ts";
import { degrees, grams, unbroken } from "./words.ts";

interface Entry {
  readonly key: "diameter" | "motors" | "ratio" | "efficiency" | "stall";
  readonly label: string;
  readonly example: string;
  /** the most that is taken, in the shown unit; more than 0 always */
  readonly most: number;
  readonly whole?: boolean;
}

type Texts = Readonly<Record<Entry["key"], string>>;

const ENTRIES: readonly Entry[] = [
  { key: "diameter", label: "Wheel diameter, mm", example: "32", most: 2000 },
  { key: "motors", label: "Drive motors", example: "2", most: 16, whole: true },
  { key: "ratio", label: "Gear ratio, motor turns a wheel turn", example: "50", most: 10000 },
  { key: "efficiency", label: "Gear efficiency, %", example: "60", most: 100 },
  { key: "stall", label: "Stall torque of one motor, mN·m", example: "4", most: 1e5 },
];
const EMPTY: Texts = { diameter: "", motors: "", ratio: "", efficiency: "", stall: "" };

function problemOf({ example, most, whole }: Entry, text: string): string | null {
  if (text.trim() === "") return null;
  const value = parseNumber(text);
  const allowed = `allowed: ${whole ? "whole numbers from 1" : "above 0"} to ${most}, for example “${example}”.`;
  if (value === null) return `Read “${text.trim()}”, which is no number here; ${allowed}`;
  if (!(value > 0 && value <= most)) return `Read “${text.trim()}”; ${allowed}`;
  return whole && !Number.isInteger(value) ? `Read “${text.trim()}”; ${allowed}` : null;
}

/** The drive as typed; null until every field can be read. */
function driveOf(texts: Texts): { readonly drive: Drive; readonly stall: number } | null {
  if (ENTRIES.some((entry) => texts[entry.key].trim() === "" || problemOf(entry, texts[entry.key])))
    return null;
  const value = (key: Entry["key"]) => parseNumber(texts[key]) ?? Number.NaN;
  return {
    drive: {
      wheelRadius: fromUnit(value("diameter"), "length", "mm") / 2,
      motors: value("motors"),
      gearRatio: value("ratio"),
      gearEfficiency: fromUnit(value("efficiency"), "fraction", "%"),
    },
    stall: fromUnit(value("stall"), "torque", "mN·m"),
  };
}

/** Does the drive climb? Typed here for a look; the build does not keep it. */
export function DrivePanel({ climber }: { climber: Climber }) {
  const [texts, setTexts] = useState<Texts>(EMPTY);
  const typed = driveOf(texts);
  return (
    <details class="attitude-drive">
      <summary>Torque to climb</summary>
      <p class="quiet small">For a look only: what is typed here is not kept with the build.</p>
      {ENTRIES.map((entry) => (
        <TextField
          key={entry.key}
          label={entry.label}
          value={texts[entry.key]}
          placeholder={entry.example}
          error={problemOf(entry, texts[entry.key])}
          onChange={(text) => setTexts((before) => ({ ...before, [entry.key]: text }))}
        />
      ))}
      <output>
        {typed ? (
          <Climb made={climber.made} answer={driveAnswer(climber, typed.drive, typed.stall)} />
        ) : (
          <NoDrive climber={climber} missing={missingOf(texts)} />
        )}
      </output>
    </details>
  );
}

/** @returns what of the drive isn't known yet, as a list says it */
function missingOf(texts: Texts): string[] {
  return ENTRIES.filter((entry) => texts[entry.key].trim() === "" || problemOf(entry, texts[entry.key])).map(
    ({ label }) => label.split(",")[0].toLowerCase(),
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
  return unbroken(
    `${formatQuantity(torque, "torque")} a motor at ${degrees(angle)}, ${formatFixed(share * 100, 0)}\u2009% of stall`,
  );
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
