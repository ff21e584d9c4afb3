import { useMemo, useState } from "preact/hooks";
import { type NearMotor, nearMotors } from "../../../shared/book/size/nearMotors.ts";
import { isTyped } from "../../../shared/book/size/need/bookOfNeed.ts";
import type { Side } from "../../../shared/book/size/sides.ts";
import type { SizeRow } from "../../../shared/decide/size/row.ts";
import { marginText } from "../../../shared/decide/verdict/figures.ts";
import { formatFixed } from "../../../shared/units/format.ts";
import { BusyButton } from "../../ui/BusyButton.tsx";
import { Problem } from "../../ui/Problem.tsx";
import { ScrollTable } from "../../ui/ScrollTable.tsx";
import { makeBuild, tryInChoose } from "./open.ts";
import type { Settings } from "./settings.ts";
import { kvText, powerText, sizeText } from "./sizeWords.ts";
import type { Subject } from "./subject.ts";

interface Props {
  readonly subject: Subject;
  readonly side: Side;
  readonly settings: Settings;
  readonly family: string;
  readonly best: SizeRow & { readonly kv: number };
}

const MILLI = 1000;

/** What is being done, and why the last thing couldn't be. */
function useDoing() {
  const [busy, setBusy] = useState<string | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const doing = async (key: string, work: () => Promise<string | null>) => {
    setBusy(key);
    setProblem(await work());
    setBusy(null);
  };
  return { busy, problem, doing };
}

/** Motors of the book on the size that was found, nearest to the wanted winding first, and what each would do. */
export function MotorTable({ subject, side, settings, family, best }: Props) {
  const { book, build } = subject;
  const { hold, cellVoltage } = settings;
  const { kv, diameter } = best;
  const { motorConstant } = side.numbers.motor;
  const own = useMemo(() => book.motors.filter(({ id }) => !isTyped(id)), [book]);
  const motors = useMemo(
    () =>
      nearMotors({ ...book, motors: own }, side.build, {
        rotor: family,
        diameter,
        kv,
        motorConstant,
        cellVoltage,
        hold,
      }),
    [book, own, side, family, diameter, kv, motorConstant, cellVoltage, hold],
  );
  const { busy, problem, doing } = useDoing();
  const search = () =>
    tryInChoose(subject, {
      near: motors[0],
      rotor: family,
      diameter,
      motors: own.filter(({ data }) => data.mass !== undefined && !data.retired).map(({ id }) => id),
      attitude: hold.angle,
      margin: hold.margin,
    });
  return (
    <>
      <h2>Motors that come near</h2>
      <p class="quiet small">
        On {sizeText(diameter)}, wound for {kvText(kv)} at the strength chosen. The margin is that of the
        attitude wanted, with cells at the voltage above. Each is solved as a build of its own, with the mass
        that its parts give it.
      </p>
      <NearTable
        motors={motors}
        busy={busy}
        onMake={(motor) => void doing(motor.id, () => makeBuild(book, build.data.name, motor))}
      />
      {problem && <Problem message={problem} />}
      {motors.length === 0 && (
        <p>No motor of the book has its constants yet: add one, or log a motor test.</p>
      )}
      {side.kind === "ducted" && motors.length > 0 && (
        <BusyButton type="button" busy={busy === "choose"} onClick={() => void doing("choose", search)}>
          {subject.need
            ? "Make a build and try the sizes next to it in Choose"
            : "Try the sizes next to it in Choose"}
        </BusyButton>
      )}
    </>
  );
}

interface NearTableProps {
  readonly motors: readonly NearMotor[];
  /** id of the motor that a build is made with */
  readonly busy: string | null;
  readonly onMake: (motor: NearMotor) => void;
}

function NearTable({ motors, busy, onMake }: NearTableProps) {
  return (
    <ScrollTable label="Motors that come near">
      <table class="size-motors">
        <thead>
          <tr>
            <th scope="col">Motor</th>
            <th scope="col">Wound for</th>
            <th scope="col">Strength, mN·m/√W</th>
            <th scope="col">Margin</th>
            <th scope="col">From the pack</th>
            <th scope="col">
              <span class="visually-hidden">What to do with it</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {motors.map((motor) => (
            <MotorRow key={motor.id} motor={motor} busy={busy === motor.id} onMake={() => onMake(motor)} />
          ))}
        </tbody>
      </table>
    </ScrollTable>
  );
}

function MotorRow({ motor, busy, onMake }: { motor: NearMotor; busy: boolean; onMake: () => void }) {
  const { name, kv, motorConstant, margin, packPower } = motor;
  return (
    <tr>
      <th scope="row">{name}</th>
      <td>{kvText(kv)}</td>
      <td>{formatFixed(motorConstant * MILLI, 2)}</td>
      <td>{marginText(Number.isFinite(margin) ? margin : null)}</td>
      <td>{packPower === null ? "does not turn" : powerText(packPower)}</td>
      <td>
        <BusyButton
          type="button"
          busy={busy}
          onClick={onMake}
          aria-label={`Make a build of it, with ${name}`}
        >
          Make a build of it
        </BusyButton>
      </td>
    </tr>
  );
}
