import { formatQuantity } from "../../../../shared/units/format.ts";
import type { Known } from "../../../ui/partial/known.ts";
import { grams, rpmText } from "../../../ui/partial/partialWords.ts";
import { UnknownMarks } from "../../../ui/partial/UnknownMarks.tsx";
import { duration, volts } from "../rundownWords.ts";
import type { PartialRun, RunMoment } from "./run.ts";

const ROWS: readonly (readonly [string, (moment: RunMoment) => string | null])[] = [
  ["pull", ({ suction }) => grams(suction)],
  ["pressure", ({ pressure }) => (pressure === null ? null : formatQuantity(pressure, "pressure"))],
  ["rotor speed", ({ rpm }) => rpmText(rpm)],
  ["pack current", ({ sample }) => formatQuantity(sample.packCurrent, "current")],
  ["pack voltage under load", ({ sample }) => volts(sample.packVoltage)],
  ["a cell, under load", ({ sample }) => volts(sample.cellVoltage)],
  ["winding", ({ sample }) => formatQuantity(sample.windingTemperature, "temperature")],
];

/** The run at its start and at its end. */
export function Ends({ known, run }: { known: Known; run: PartialRun }) {
  return (
    <>
      <h2>
        From start to end
        <UnknownMarks known={known} gripless />
      </h2>
      <table class="holds known-figures">
        <thead>
          <tr>
            <th scope="col">Figure</th>
            <th scope="col">Start</th>
            <th scope="col">{duration(run.end.time)}</th>
          </tr>
        </thead>
        <tbody>
          {ROWS.map(([name, value]) => {
            const [start, last] = [value(run.start), value(run.last)];
            return (
              start !== null && (
                <tr key={name}>
                  <th scope="row">{name}</th>
                  <td>{start}</td>
                  <td>{last}</td>
                </tr>
              )
            );
          })}
        </tbody>
      </table>
    </>
  );
}
