import { leastFriction } from "../../../../shared/physics/hold/leastFriction.ts";
import type { Known } from "../../../ui/partial/known.ts";
import { leading } from "../../../ui/partial/known.ts";
import { circumstanceText, frictionText, timesText } from "../../../ui/partial/partialWords.ts";
import { UnknownMarks } from "../../../ui/partial/UnknownMarks.tsx";

/** Steps of the table [°]. */
const STEP = 15;
const ANGLES = Array.from({ length: 180 / STEP + 1 }, (_, i) => i * STEP);

const shown = (least: number | null): string => (least === null ? "none does" : frictionText(least));

/** The friction that every fifteenth degree takes, floor to ceiling. */
export function NeededFriction({ known }: { known: Known }) {
  const at = leading(known);
  if (!at) return null;
  const target = known.build.targetMargin;
  const margins = target === 1 ? [1] : [1, target];
  const least = (angle: number, margin: number) => leastFriction(known.vehicle, at.suction, angle, margin);
  return (
    <>
      <h2>
        Friction that it takes
        <UnknownMarks known={known} />
      </h2>
      <table class="holds needed-friction">
        <caption class="quiet small">
          {circumstanceText(known, at)} The least μ of the wheels by attitude.
        </caption>
        <thead>
          <tr>
            <th scope="col">Inclination</th>
            {margins.flatMap((margin) => [
              <th key={`parked ${margin}`} scope="col">
                Parked, {timesText(margin)}
              </th>,
              <th key={`driving ${margin}`} scope="col">
                Uphill, {timesText(margin)}
              </th>,
            ])}
          </tr>
        </thead>
        <tbody>
          {ANGLES.map((angle) => (
            <tr key={angle}>
              <th scope="row">{angle}°</th>
              {margins.flatMap((margin) => {
                const { parked, driving } = least(angle, margin);
                return [
                  <td key={`parked ${margin}`}>{shown(parked)}</td>,
                  <td key={`driving ${margin}`}>{shown(driving)}</td>,
                ];
              })}
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}
