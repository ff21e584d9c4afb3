import { marginText } from "../../../shared/decide/verdict/figures.ts";
import type { LeastFriction } from "../../../shared/physics/hold/leastFriction.ts";
import type { FrictionNeeded, PartialHold } from "../../../shared/physics/partial/partialAnswer.ts";
import { firstInWords, gradeOf } from "../verdictWords.ts";
import type { Known } from "./known.ts";
import { fallsAnyway, frictionText, timesText } from "./partialWords.ts";

type State = keyof LeastFriction;
const STATES: readonly State[] = ["parked", "driving"];

interface CellProps {
  readonly hold: PartialHold;
  readonly state: State;
  readonly target: number;
}

const HELD = "holds";
/** Short enough for a narrow column. */
const madeText = (margin: number | null): string => (margin === null ? HELD : marginText(margin));
const NO_PULL = "no pull needed";

function Told({ hold, state, target }: CellProps) {
  const told = hold.verdict?.[state];
  if (!told) return null;
  const { grade, word } = gradeOf(told.margin, target, null);
  return (
    <td class={grade}>
      <span class="margin">{madeText(told.margin)}</span>
      <small>{told.margin === null ? NO_PULL : word}</small>
      {told.governs.length > 0 && <small>{firstInWords(told.governs)} first</small>}
    </td>
  );
}

/** Friction that would do, and for the margin wanted. */
export function Needs({ needs, state, target }: { needs: FrictionNeeded; state: State; target: number }) {
  const [least, wanted] = [needs.holds[state], needs.target[state]];
  if (least === null) return <small>no friction does it</small>;
  return (
    <>
      <small class="needs">needs μ ≥ {frictionText(least)}</small>
      {target !== 1 && (
        <small class="needs">
          {timesText(target)}: {wanted === null ? "out of reach" : `μ ≥ ${frictionText(wanted)}`}
        </small>
      )}
    </>
  );
}

/** Without friction: a fall that no grip prevents, a hold that needs none, else not known. */
function Untold({ hold, state, target }: CellProps) {
  const { needs, gripless } = hold;
  if (!needs) return null;
  if (fallsAnyway(hold))
    return (
      <td class="bad">
        <span class="margin">{madeText(gripless)}</span>
        <small>falls with any grip</small>
        <small>lifts off or tips</small>
      </td>
    );
  if (needs.holds[state] === 0)
    return (
      <td class={gradeOf(gripless, target, null).grade}>
        <span class="margin">{madeText(gripless)}</span>
        <small>{gripless === null ? NO_PULL : "lift-off and tip"}</small>
        <small>needs no grip</small>
      </td>
    );
  return (
    <td>
      <span class="margin quiet">not known</span>
      <Needs needs={needs} state={state} target={target} />
    </td>
  );
}

function Row({ title, hold, target }: Omit<CellProps, "state"> & { title: string }) {
  const Cell = hold.verdict ? Told : Untold;
  return (
    <tr>
      <th scope="row">
        {title} {hold.angle.toFixed(0)}°
      </th>
      {STATES.map((state) => (
        <Cell key={state} hold={hold} state={state} target={target} />
      ))}
    </tr>
  );
}

export interface HoldsTableProps {
  readonly known: Known;
  readonly holds: readonly PartialHold[];
  /** under which circumstance, as a caption */
  readonly caption: string;
  /** from floor to ceiling, where the friction isn't known */
  readonly everywhere?: FrictionNeeded | null;
}

/** What a pull holds on each attitude, as far as the friction allows to say. */
export function HoldsTable({ known, holds, caption, everywhere = null }: HoldsTableProps) {
  const target = known.build.targetMargin;
  return (
    <table class="holds partial-holds">
      <caption class="quiet small">{caption}</caption>
      <thead>
        <tr>
          <th scope="col">Attitude</th>
          <th scope="col">Parked</th>
          <th scope="col">Driving uphill</th>
        </tr>
      </thead>
      <tbody>
        {known.named.map(({ title, angle }) => {
          const hold = holds.find((each) => each.angle === angle);
          return hold && <Row key={angle} title={title} hold={hold} target={target} />;
        })}
        {everywhere && (
          <tr>
            <th scope="row">Anywhere, 0° to 180°</th>
            {STATES.map((state) => (
              <td key={state}>
                <Needs needs={everywhere} state={state} target={target} />
              </td>
            ))}
          </tr>
        )}
      </tbody>
    </table>
  );
}
