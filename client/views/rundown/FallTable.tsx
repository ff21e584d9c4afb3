import { marginText } from "../../../shared/decide/verdict/figures.ts";
import type { Fall, Sample } from "../../../shared/physics/rundown.ts";
import { formatFixed } from "../../../shared/units/format.ts";
import { href } from "../../app/router.ts";
import { chargeText } from "../../ui/chargeWords.ts";
import type { Answered, Track } from "./answer.ts";
import { fallWords } from "./rundownWords.ts";

const TONES = { falls: "near", "holds-to-the-end": "good", "never-held": "bad" } as const;

function FallCell({ fall, samples }: { fall: Fall; samples: readonly Sample[] }) {
  const { head, rest } = fallWords(fall, samples);
  return (
    <td class={TONES[fall.state]}>
      <span class="fall">{head}</span>
      {rest && <small>{rest}</small>}
    </td>
  );
}

/** Under which part of the drive cycle an attitude is judged. */
function judgedWords({ driveCurrent, parked }: NonNullable<Track["judged"]>): string {
  return parked ? "parked" : `driving at ${formatFixed(driveCurrent, 1)}\u2009A`;
}

/** When each attitude is lost: minutes, volts of the pack, volts a cell. */
export function FallTable({ answered }: { answered: Answered }) {
  const { tracks, samples, targetMargin } = answered;
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
        {tracks.map((track) => (
          <tr key={track.key}>
            <th scope="row">
              {track.title} {track.angle.toFixed(0)}°
              {track.judged && <small class="quiet fall-judged">{judgedWords(track.judged)}</small>}
            </th>
            <FallCell fall={track.holds} samples={samples} />
            {targetMargin !== 1 && <FallCell fall={track.target} samples={samples} />}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
