import type { PartialMoment } from "../../../shared/physics/partial/partialAnswer.ts";
import { formatQuantity } from "../../../shared/units/format.ts";
import { Mark } from "../Mark.tsx";
import type { Known } from "./known.ts";
import { grams, rpmText } from "./partialWords.ts";

const SPEED = "rotor speed";

function figuresOf({ suction, pressure, flow, rpm, point }: PartialMoment): [string, string][] {
  const cavity: [string, string][] =
    pressure === null || flow === null
      ? []
      : [
          ["pressure", formatQuantity(pressure, "pressure")],
          ["flow", formatQuantity(flow, "flow")],
        ];
  const electric: [string, string][] = point
    ? [
        ["motor current", formatQuantity(point.motorCurrent, "current")],
        ["pack current", formatQuantity(point.packCurrent, "current")],
        ["pack voltage under load", formatQuantity(point.packVoltage, "voltage")],
        ["winding, settled", formatQuantity(point.windingTemperature, "temperature")],
      ]
    : [];
  return [["pull", grams(suction)], ...cavity, [SPEED, rpmText(rpm)], ...electric];
}

/** What is known whatever is missing: a list of figures, or a row for each tested speed. */
export function KnownFigures({ known }: { known: Known }) {
  const { moments } = known.answer;
  if (moments.length === 0) return null;
  if (known.coupled)
    return (
      <table class="holds known-figures">
        {moments[0].extrapolated && (
          <caption class="quiet small">
            Operating point <Beyond cavity={moments[0].pressure !== null} />
          </caption>
        )}
        <tbody>
          {figuresOf(moments[0]).map(([name, value]) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              <td>{value}</td>
            </tr>
          ))}
        </tbody>
      </table>
    );
  return <BySpeed moments={moments} />;
}

/** A row for each speed of the tests. */
function BySpeed({ moments }: { moments: readonly PartialMoment[] }) {
  const columns = figuresOf(moments[0]).filter(([name]) => name !== SPEED);
  return (
    <table class="holds known-figures">
      <thead>
        <tr>
          <th scope="col">{SPEED}</th>
          {columns.map(([name]) => (
            <th key={name} scope="col">
              {name}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {moments.map((moment) => (
          <tr key={moment.speed}>
            <th scope="row">
              {rpmText(moment.rpm)}
              {moment.extrapolated && <Beyond cavity={moment.pressure !== null} />}
            </th>
            {figuresOf(moment)
              .filter(([name]) => name !== SPEED)
              .map(([name, value]) => (
                <td key={name}>{value}</td>
              ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Beyond({ cavity }: { cavity: boolean }) {
  return (
    <>
      {" "}
      <Mark word="extrapolated" title={`beyond the tested ${cavity ? "flows" : "speeds"}`} />
    </>
  );
}
