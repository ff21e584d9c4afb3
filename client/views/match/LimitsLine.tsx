import { rotorBody, rotorGuessed } from "../../../shared/book/limitsInput.ts";
import { type Book, solvable } from "../../../shared/book/resolve.ts";
import { rotorFigures } from "../../../shared/decide/limits/rotor.ts";
import { CELSIUS_ZERO } from "../../../shared/physics/constants.ts";
import { formatFixed } from "../../../shared/units/format.ts";
import { href } from "../../app/router.ts";
import { changes, current } from "../../state/build.ts";
import { changesToQuery } from "../../state/handles.ts";
import type { Outcome } from "../../state/outcome.ts";
import { Caution } from "../../ui/Caution.tsx";
import { Mark } from "../../ui/Mark.tsx";

const PERCENT = 100;
const THIN_SPACE = "\u2009";

interface Props {
  readonly book: Book;
  readonly outcome: Outcome;
}

const motorOf = ({ book, outcome }: Props) =>
  book.motors.find((each) => each.id === outcome.build.motor)?.data;

const celsius = (kelvin: number) => `${formatFixed(kelvin - CELSIUS_ZERO, 0)}${THIN_SPACE}°C`;

/** How near something is to its limit. */
interface Near {
  readonly text: string;
  /** true: past it */
  readonly beyond: boolean;
}

const within = (text: string): Near => ({ text, beyond: false });

function windingNear(props: Props): Near {
  const { prediction, resolved } = props.outcome;
  const limit = motorOf(props)?.windingLimit;
  if (!prediction?.point || !resolved?.motor) return within("");
  if (resolved.motor.thermal.thermalResistance === null)
    return within("The winding's temperature isn't known: its thermal resistance is missing.");
  const { windingTemperature } = prediction.point;
  const settles = `The winding settles at ${celsius(windingTemperature)}`;
  if (limit === undefined) return within(`${settles}, its limit isn't known.`);
  if (windingTemperature <= limit) return within(`${settles}, its limit is ${celsius(limit)}.`);
  const text = `${settles}, above its limit of ${celsius(limit)}: the motor burns if it is left running.`;
  return { text, beyond: true };
}

function rotorNear({ book, outcome }: Props): Near {
  const { prediction, resolved, build } = outcome;
  const input = resolved && solvable(resolved);
  if (!prediction?.point || !input) return within("");
  const rotor = book.rotors.find((each) => each.id === build.rotor)?.data;
  const turning = { build: input, rotor: rotor ? rotorBody(rotor, build.diameter) : null };
  const { safeSpeed, speed } = rotorFigures(turning, prediction.point.speed);
  if (safeSpeed === null) return within("How fast the rotor may be run isn't known.");
  const share = formatFixed((PERCENT * speed) / safeSpeed, 0);
  const text = `The rotor turns at ${share}${THIN_SPACE}% of the speed at which it should not be run.`;
  return { text, beyond: speed > safeSpeed };
}

const windingGuessed = ({ outcome }: Props) => outcome.resolved?.motor?.thermal.basis === "estimated";

function rotorMarked({ book, outcome }: Props): boolean {
  const rotor = book.rotors.find((each) => each.id === outcome.build.rotor)?.data;
  return rotor?.material !== undefined && rotorGuessed(rotor);
}

function Said({ near: { text, beyond } }: { readonly near: Near }) {
  return <span class={beyond ? "bad figure" : undefined}>{text}</span>;
}

/** How near winding and rotor are to their limits, and where all of it stands. */
export function LimitsLine(props: Props) {
  const build = current.value?.id ?? null;
  return (
    <>
      <p class="small">
        <Said near={windingNear(props)} />{" "}
        {windingGuessed(props) && <Mark word="estimated" title="thermal figures of the motor" />}{" "}
        <Said near={rotorNear(props)} />{" "}
        {rotorMarked(props) && <Mark word="estimated" title="material of the rotor" />}{" "}
        <a href={`${href("run-down", build, changesToQuery(changes.value))}#limits`}>
          What burns or bursts first
        </a>
      </p>
      <OverVoltage {...props} />
    </>
  );
}

/** Shown only where the voltage at the motor lies above what its maker rates it for. */
function OverVoltage(props: Props) {
  const { prediction, build } = props.outcome;
  const rated = motorOf(props)?.ratedVoltage;
  const volts = prediction?.point?.packVoltage;
  if (!rated || volts === undefined || volts * build.supply.duty <= rated) return null;
  const applied = volts * build.supply.duty;
  return (
    <Caution>
      The motor gets {formatFixed(applied, 1)} V, {formatFixed(applied / rated, 2)} × its rated{" "}
      {formatFixed(rated, 1)} V: over it pressure grows with the square, heat with about the cube of voltage
      or worse, and a motor overheats in seconds.
    </Caution>
  );
}
