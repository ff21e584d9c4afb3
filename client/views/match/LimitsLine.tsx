import { rotorBody, rotorGuessed } from "../../../shared/book/limitsInput.ts";
import { type Bench, solvable } from "../../../shared/book/resolve.ts";
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
  readonly bench: Bench;
  readonly outcome: Outcome;
}

const motorOf = ({ bench, outcome }: Props) =>
  bench.motors.find((each) => each.id === outcome.build.motor)?.data;

const celsius = (kelvin: number) => `${formatFixed(kelvin - CELSIUS_ZERO, 0)}${THIN_SPACE}°C`;

function windingText(props: Props): string {
  const { prediction, resolved } = props.outcome;
  const limit = motorOf(props)?.windingLimit;
  if (!prediction?.point || !resolved?.motor) return "";
  if (resolved.motor.thermal.thermalResistance === null)
    return "The winding's temperature isn't known: its thermal resistance is missing.";
  const settles = `The winding settles at ${celsius(prediction.point.windingTemperature)}`;
  return limit === undefined
    ? `${settles}, its limit isn't known.`
    : `${settles}, its limit is ${celsius(limit)}.`;
}

function rotorText({ bench, outcome }: Props): string {
  const { prediction, resolved, build } = outcome;
  const input = resolved && solvable(resolved);
  if (!prediction?.point || !input) return "";
  const rotor = bench.rotors.find((each) => each.id === build.rotor)?.data;
  const turning = { build: input, rotor: rotor ? rotorBody(rotor, build.diameter) : null };
  const { safeSpeed, speed } = rotorFigures(turning, prediction.point.speed);
  if (safeSpeed === null) return "How fast the rotor may be run isn't known.";
  const share = formatFixed((PERCENT * speed) / safeSpeed, 0);
  return `The rotor turns at ${share}${THIN_SPACE}% of the speed at which it should not be run.`;
}

const windingGuessed = ({ outcome }: Props) => outcome.resolved?.motor?.thermal.basis === "estimated";

function rotorMarked({ bench, outcome }: Props): boolean {
  const rotor = bench.rotors.find((each) => each.id === outcome.build.rotor)?.data;
  return rotor?.material !== undefined && rotorGuessed(rotor);
}

/** How near winding and rotor are to their limits, and where all of it stands. */
export function LimitsLine(props: Props) {
  const build = current.value?.id ?? null;
  return (
    <>
      <p class="small">
        {windingText(props)}{" "}
        {windingGuessed(props) && <Mark word="estimated" title="thermal figures of the motor" />}{" "}
        {rotorText(props)} {rotorMarked(props) && <Mark word="estimated" title="material of the rotor" />}{" "}
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
