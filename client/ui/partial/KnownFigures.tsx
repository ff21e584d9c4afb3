import type { PartialMoment } from "../../../shared/physics/partial/answer.ts";
import { formatQuantity } from "../../../shared/units/format.ts";
import { Mark } from "../Mark.tsx";
import type { Known } from "./known.ts";
import { grams, rpmText } from "./words.ts";

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
  return [["pull", grams(suction)], ...cavity, ["rotor speed", rpmText(rpm)], ...electric];
}

/** What is known whatever is missing: a list of figures, or a row for each tested speed. */
export function KnownFigures({ known }: { known: Known }) {
  const { moments } = known.answer;
  if (moments.length === 0) return null;
  if (known.coupled)
    return (
      <table class="holds known-figures">
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
  return (
    <table class="holds known-figures">
      <thead>
        <tr>
          {figuresOf(moments[0]).map(([name]) => (
            <th key={name} scope="col">
              {name}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {moments.map((moment) => (
          <tr key={moment.speed}>
            {figuresOf(moment).map(([name, value]) => (
              <td key={name}>{value}</td>
            ))}
            {moment.extrapolated && (
              <td>
                <Mark word="extrapolated" title="beyond the tested flows" />
              </td>
            )}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
