import { rotorGuessed } from "../../../shared/book/limitsInput.ts";
import type { Book } from "../../../shared/book/resolve.ts";
import { formatFixed } from "../../../shared/units/format.ts";
import { href } from "../../app/router.ts";
import { changes, current } from "../../state/build.ts";
import type { Outcome } from "../../state/outcome.ts";
import { triedToQuery } from "../../state/partsTried.ts";
import { Caution } from "../../ui/Caution.tsx";
import { Mark } from "../../ui/Mark.tsx";

interface Props {
  readonly book: Book;
  readonly outcome: Outcome;
}

const motorOf = ({ book, outcome }: Props) =>
  book.motors.find((each) => each.id === outcome.build.motor)?.data;

const windingGuessed = ({ outcome }: Props) => outcome.resolved?.motor?.thermal.basis === "estimated";

function rotorMarked({ book, outcome }: Props): boolean {
  const rotor = book.rotors.find((each) => each.id === outcome.build.rotor)?.data;
  return rotor?.material !== undefined && rotorGuessed(rotor);
}

/** Where every limit stands, and which of those that the verdict judges rest on a guess. */
export function LimitsLine(props: Props) {
  const build = current.value?.id ?? null;
  const guessed = [
    ...(windingGuessed(props) ? ["thermal figures of the motor"] : []),
    ...(rotorMarked(props) ? ["material of the rotor"] : []),
  ];
  return (
    <>
      <p class="small">
        <a href={`${href("run-down", build, triedToQuery(changes.value))}#limits`}>
          What burns or bursts first
        </a>{" "}
        {guessed.length > 0 && <Mark word="estimated" title={guessed.join(" and ")} />}
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
