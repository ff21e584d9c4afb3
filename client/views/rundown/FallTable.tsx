import type { Fall, Sample } from "../../../shared/physics/rundown.ts";
import { marginText } from "../../ui/verdictWords.ts";
import type { Answered } from "./answer.ts";
import { fallWords } from "./words.ts";

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

/** When each attitude is lost: minutes, volts of the pack, volts a cell. */
export function FallTable({ answered }: { answered: Answered }) {
  const { tracks, samples, targetMargin } = answered;
  return (
    <table class="holds fall-table">
      <caption class="quiet small">
        Driving nose uphill. Under the minutes: the voltage under load there, the pack's as it reaches the
        driver, and a cell's at the cell.
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
            </th>
            <FallCell fall={track.holds} samples={samples} />
            {targetMargin !== 1 && <FallCell fall={track.target} samples={samples} />}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
