import type { PropellerBasis } from "../../../shared/book/propellerBasis.ts";
import { type Book, type Resolved, solvable } from "../../../shared/book/resolve.ts";
import { offsetInUse } from "../../../shared/book/throttle.ts";
import type { Build } from "../../../shared/model/build.ts";
import { commandFromDuty } from "../../../shared/physics/motor.ts";
import { formatFixed, formatQuantity } from "../../../shared/units/format.ts";
import type { HandleKey } from "../../state/handles.ts";
import { counted } from "../../ui/count.ts";
import { calibratedFrictionWords, gapWords } from "../../ui/gapWords.ts";
import { Mark } from "../../ui/Mark.tsx";

interface BasisProps {
  readonly book: Book;
  readonly build: Build;
  readonly resolved: Resolved | null;
  readonly handle: HandleKey;
}

const mm = (metres: number) => formatQuantity(metres, "length", { digits: 2 });

function doubt(uncertainty: number | null | undefined, say: (u: number) => string): string {
  return uncertainty ? `, ± ${say(uncertainty)}` : "";
}

const isPropeller = (book: Book, build: Build): boolean =>
  book.rotors.find(({ id }) => id === build.rotor)?.data.kind === "propeller";

interface PropellerLineProps extends Pick<BasisProps, "build"> {
  readonly thrust: PropellerBasis;
  /** the nearest tested size, where the build's own was not tested [m] */
  readonly from: number | null;
}

function PropellerLine({ build, thrust, from }: PropellerLineProps) {
  const sizes = thrust.testedDiameters.map(mm).join(" and ");
  const tests = counted(thrust.testIds.length, "thrust test");
  if (from === null)
    return (
      <>
        tested at {sizes}, {tests}
      </>
    );
  return (
    <>
      {mm(build.diameter)} from {mm(from)} <Mark word="scaled" title={`tested at ${sizes}`} />
    </>
  );
}

function RotorLine({ book, build, resolved }: BasisProps) {
  const rotor = resolved?.rotor;
  const thrust = resolved?.thrust;
  if (thrust) return <PropellerLine build={build} thrust={thrust} from={resolved?.scaledFrom ?? null} />;
  if (!rotor) return <>no {isPropeller(book, build) ? "thrust" : "curve"} test yet</>;
  if (rotor.basis === "estimated")
    return (
      <>
        from its geometry, ± 30 % <Mark word="estimated" />
      </>
    );
  const sizes = rotor.testedDiameters.map(mm).join(" and ");
  if (resolved.scaledFrom === null)
    return (
      <>
        tested at {sizes} {rotor.basis === "two-point" && <Mark word="two-point" />}
      </>
    );
  return (
    <>
      {mm(build.diameter)} from {mm(resolved.scaledFrom)} <Mark word="scaled" title={`tested at ${sizes}`} />
    </>
  );
}

function GapLine({ book, build, resolved }: BasisProps) {
  const skirt = book.skirts.find((each) => each.id === build.skirt);
  if (!resolved) return <>not known</>;
  const guessed = resolved.gap.basis === "set" && skirt?.data.estimated.includes("gap");
  return (
    <>
      {gapWords(resolved)}
      {resolved.leak && `; leak measured there, ${counted(resolved.leak.testIds.length, "test")}`}{" "}
      {guessed && <Mark word="estimated" />}
    </>
  );
}

function FrictionLine({ book, build, resolved }: BasisProps) {
  const friction = resolved?.friction;
  const surface = book.surfaces.find((each) => each.id === build.surface)?.data.name ?? "this surface";
  if (!friction) return <>no friction test on {surface} yet</>;
  const spread = doubt(friction.uncertainty, (u) => formatFixed(u, 2));
  if (friction.basis === "what-if") return <>set in the build</>;
  const calibrated = resolved && calibratedFrictionWords(resolved);
  if (calibrated) return <>{calibrated}</>;
  if (friction.basis === "measured")
    return (
      <>
        tilt board on {surface}, {counted(friction.testIds.length, "test")}
        {spread}
      </>
    );
  return (
    <>
      for {surface}
      {spread} <Mark word="stated" />
    </>
  );
}

function MassLine({ build }: BasisProps) {
  return (
    <>
      set in the build
      {doubt(build.uncertainty["vehicle.mass"], (u) => formatQuantity(u, "mass", { digits: 1 }))}
    </>
  );
}

/** Handles that a motor passes on, which nothing couples to the rotor. */
const BY_THE_MOTOR: readonly HandleKey[] = ["series", "charge", "duty"];

/** @returns why a handle changes nothing yet; null where it does */
function idleLine({ handle, resolved }: BasisProps): string | null {
  const unknown = resolved?.partial?.unknown ?? [];
  if (unknown.includes("speed") && BY_THE_MOTOR.includes(handle)) return "changes nothing at a tested speed";
  return handle === "charge" && unknown.includes("charge")
    ? "changes nothing yet: the pack's voltage by charge isn't known"
    : null;
}

function ChargeLine({ resolved }: BasisProps) {
  const volts = (resolved && solvable(resolved))?.pack.openCircuitVoltage;
  return volts === undefined ? (
    <>state of charge</>
  ) : (
    <>{formatQuantity(volts, "voltage")} a cell, open circuit</>
  );
}

/** The duty, and what to set at the controller where its motor begins to turn above 0. */
function ThrottleLine({ build, resolved }: BasisProps) {
  const offset = offsetInUse(resolved?.motor?.throttle);
  if (offset === 0) return <>set in the build</>;
  const command = formatQuantity(commandFromDuty(build.supply.duty, offset), "fraction");
  return (
    <>
      set {command} at the controller: the motor turns from {formatQuantity(offset, "fraction")} on
    </>
  );
}

/** What a handle's value rests on: measured, stated or set, with its uncertainty where one is known. */
export function Basis(props: BasisProps) {
  const pack = props.book.packs.find((each) => each.id === props.build.pack);
  const idle = idleLine(props);
  if (idle) return <>{idle}</>;
  switch (props.handle) {
    case "diameter":
      return <RotorLine {...props} />;
    case "series":
      return (
        <>
          {props.build.overrides.series === undefined
            ? `as in ${pack?.data.name ?? "the pack"}`
            : "set in the build"}
        </>
      );
    case "charge":
      return <ChargeLine {...props} />;
    case "duty":
      return <ThrottleLine {...props} />;
    case "gap":
      return <GapLine {...props} />;
    case "wheelFriction":
      return <FrictionLine {...props} />;
    case "mass":
      return <MassLine {...props} />;
    default:
      return <>set in the build</>;
  }
}
