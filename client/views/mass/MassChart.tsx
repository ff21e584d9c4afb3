import type { MassFigure } from "../../../shared/book/mass/ledger.ts";
import { targetText } from "../../../shared/decide/verdict/figures.ts";
import { inUnit } from "../../../shared/units/format.ts";
import { headed } from "../../../shared/units/showing.ts";
import { Figure } from "../../charts/Figure.tsx";
import type { Picture } from "../../charts/picture.ts";
import { known, type Table } from "../../ui/table.ts";
import { drawMass, massHeight, massPlaces, rowText } from "./drawMass.ts";
import type { Headroom } from "./headroom.ts";
import { groupSums, headroomSentence, massText, plusMinus } from "./massWords.ts";

function massTable(of: Headroom): Table {
  const mass = ({ value, uncertainty }: MassFigure) =>
    known(inUnit(value, "mass"), inUnit(uncertainty, "mass"));
  const { uncertainty } = of.ledger.mass;
  const left = (limit: number | null) =>
    limit === null ? "any" : mass({ value: limit - of.mass, uncertainty });
  return {
    columns: [
      "What",
      headed("Mass", "mass"),
      headed("Allowed at the wanted margin", "mass"),
      headed("Left", "mass"),
      headed("Allowed at 1 ×", "mass"),
    ],
    rows: [
      ...groupSums(of).map((sum) => [sum.group, mass(sum), null, null, null]),
      ["on board", mass({ value: of.mass, uncertainty }), null, null, null],
      ...of.allowed.map(({ title, atTarget, atOne }) => [
        title,
        null,
        atTarget === null ? "any" : inUnit(atTarget, "mass"),
        left(atTarget),
        atOne === null ? "any" : inUnit(atOne, "mass"),
      ]),
    ],
  };
}

/** @returns what a group of the bar, or an attitude's row, says of itself, a line each */
function massLines(of: Headroom, key: string): string[] {
  const group = groupSums(of).find((each) => each.group === key);
  if (group) return [group.group, `${massText(group.value)}${plusMinus(group)}`];
  const row = of.allowed.find(({ title }) => title === key);
  if (!row) return [];
  const left = row.atTarget === null ? null : row.atTarget - of.mass;
  const rest = left === null ? [] : [left >= 0 ? `${massText(left)} left` : `${massText(-left)} too heavy`];
  return [rowText(row, targetText(of.target)), ...rest];
}

function massPicture(of: Headroom): Picture {
  return (size) => {
    const { bar, rows } = massPlaces(of, size.width);
    const barEnd = rows[0]?.from ?? size.height;
    const holds = (at: number) => (place: { from: number; to: number }) => at >= place.from && at < place.to;
    return {
      draw: (svg) => drawMass(svg, of, size),
      count: bar.length + rows.length,
      layout: null,
      spots: () => [...bar, ...rows],
      order: "rows",
      under: ({ x, y }) => (y < barEnd ? bar.find(holds(x)) : rows.find(holds(y))) ?? null,
      hairline: null,
    };
  };
}

/** The bar of masses with its limits, read group by group and row by row, its table, and ways to save it. */
export function MassChart({ of }: { readonly of: Headroom }) {
  return (
    <Figure
      sentence={headroomSentence(of)}
      picture={massPicture(of)}
      height={() => massHeight(of)}
      name={`mass ${of.outcome.build.name}`}
      table={() => massTable(of)}
      reading={{ label: "Masses", describe: (key) => massLines(of, key) }}
    >
      {of.allowed.length > 0 && (
        <p class="quiet small">
          Solid: as heavy as it may be for the wanted margin. Dashed: as heavy as it just holds. Both by the
          model that Match uses, parked and driving, at the charge of the build.
        </p>
      )}
    </Figure>
  );
}
