import { marginText } from "../../../shared/decide/verdict/figures.ts";
import { isDestroyed, type VerdictState } from "../../../shared/decide/verdict/states.ts";
import type { Fall } from "../../../shared/physics/rundown.ts";
import { formatFixed } from "../../../shared/units/format.ts";
import { href } from "../../app/router.ts";
import { chargeText } from "../../ui/chargeWords.ts";
import { FigureOf } from "../../ui/working/FigureOf.tsx";
import type { Answered, Track } from "./answer.ts";
import { fallWords } from "./rundownWords.ts";
import { fallTitle, runBoard } from "./runWorkings.ts";

interface Props {
  readonly answered: Answered;
  /** of the build's verdict */
  readonly state: VerdictState | null;
}

const TONES = { falls: "near", "holds-to-the-end": "good", "never-held": "bad" } as const;

/** What one attitude's run is coloured as, under the verdict on the build: none is good where it doesn't hold as a whole. */
function toneOf(fall: Fall["state"], verdict: VerdictState | null): string {
  if (verdict !== null && isDestroyed(verdict)) return "void";
  const isEven = verdict === "falls" || verdict === "over-rating";
  return isEven && fall === "holds-to-the-end" ? "even" : TONES[fall];
}

interface CellProps extends Pick<Props, "state"> {
  readonly fall: Fall;
  readonly answered: Answered;
  /** of its working */
  readonly title: string;
}

function FallCell({ fall, answered, title, state }: CellProps) {
  const { samples } = answered;
  const { head, rest } = fallWords(fall, samples);
  return (
    <td class={toneOf(fall.state, state)}>
      <span class="fall">
        {fall.time === null ? (
          head
        ) : (
          <FigureOf board={() => runBoard(answered)} title={title}>
            {head}
          </FigureOf>
        )}
      </span>
      {rest && <small>{rest}</small>}
    </td>
  );
}

/** Under which part of the drive cycle an attitude is judged. */
function judgedWords({ driveCurrent, parked }: NonNullable<Track["judged"]>): string {
  return parked ? "parked" : `driving at ${formatFixed(driveCurrent, 1)}\u202fA`;
}

function TrackRows({
  tracks,
  answered,
  state,
  over = "",
}: Props & Pick<Answered, "tracks"> & { readonly over?: string }) {
  const { targetMargin } = answered;
  const cell = (track: Track, level: "holds" | "target") => (
    <FallCell
      fall={track[level]}
      answered={answered}
      title={fallTitle(`${track.name}${over}`, level === "holds" ? 1 : targetMargin)}
      state={state}
    />
  );
  return (
    <>
      {tracks.map((track) => (
        <tr key={track.key}>
          <th scope="row">
            {track.title} {track.angle.toFixed(0)}°
            {track.judged && <small class="quiet fall-judged">{judgedWords(track.judged)}</small>}
          </th>
          {cell(track, "holds")}
          {targetMargin !== 1 && cell(track, "target")}
        </tr>
      ))}
    </>
  );
}

/** When each attitude is lost: minutes, volts of the pack, volts a cell. */
export function FallTable({ answered, state }: Props) {
  const { tracks, over, targetMargin, samples } = answered;
  return (
    <table class="holds fall-table">
      <caption class="quiet small">
        Minutes from {chargeText(samples[0].charge)}. Driving nose uphill, by the grip of its wheels
        {answered.cycled && ", each attitude under its own part of the drive cycle"}; whether its drive has
        the torque is a question for <a href={href("attitudes")}>Attitudes</a>. Under the minutes: the voltage
        under load there, the pack's as it reaches the speed controller, and a cell's at the cell.
      </caption>
      <thead>
        <tr>
          <th scope="col">Attitude</th>
          <th scope="col">Below {marginText(1)}</th>
          {targetMargin !== 1 && <th scope="col">Below {marginText(targetMargin)}</th>}
        </tr>
      </thead>
      <tbody>
        <TrackRows tracks={tracks} answered={answered} state={state} />
        {over && (
          <tr>
            <th scope="colgroup" colSpan={targetMargin === 1 ? 2 : 3} class="fall-over">
              Over {over.name} <small class="quiet">{over.text}; as if it stood there all through</small>
            </th>
          </tr>
        )}
        {over && (
          <TrackRows tracks={over.tracks} answered={answered} state={state} over={` over ${over.name}`} />
        )}
      </tbody>
    </table>
  );
}
