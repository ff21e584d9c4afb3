import { CORDIER_RANGE, cordierSpeed } from "../../../../shared/physics/fanlaws/cordier.ts";
import type { Line, Plot, Ring } from "../../../charts/model/plot.ts";
import type { Table } from "../../../ui/table.ts";
import { sizeText } from "../sizeWords.ts";
import type { Used } from "./suits.ts";

const STEPS = 60;
const [LEAST, MOST] = CORDIER_RANGE;

function goodFans(): Line {
  const points = Array.from({ length: STEPS + 1 }, (_, i) => {
    const x = LEAST * (MOST / LEAST) ** (i / STEPS);
    return { x, y: cordierSpeed(x) };
  });
  return { key: "good fans", tone: "needed", style: "dots", points, label: "good fans" };
}

function ringsOf(used: readonly Used[], shown: string): Ring[] {
  return used.flatMap(({ id, name, row, suits }): Ring[] => [
    {
      key: `best ${id}`,
      x: suits.best.diameter,
      y: suits.best.speed,
      look: "before",
      name: { lines: [`${name}, best`] },
    },
    {
      key: `used ${id}`,
      x: suits.used.diameter,
      y: suits.used.speed,
      look: "predicted",
      ...(id === shown ? { name: { lines: [`used at ${sizeText(row.diameter)}`] } } : {}),
    },
  ]);
}

/** From where a family is best to where it is used. */
const arms = (used: readonly Used[], shown: string): Line[] =>
  used.map(({ id, suits: { best, used: there } }) => ({
    key: `from ${id}`,
    tone: id === shown ? "rotor" : "quiet",
    style: "solid",
    weight: id === shown ? "normal" : "fine",
    points: [best, there].map(({ diameter, speed }) => ({ x: diameter, y: speed })),
  }));

/** @returns specific speed against specific diameter, with the published line of good fans */
export function suitsPlot(used: readonly Used[], shown: string): Plot {
  const places = used.flatMap(({ suits }) => [suits.best, suits.used]);
  const least = (values: readonly number[]) => 0.8 * Math.min(...values);
  const most = (values: readonly number[]) => 1.25 * Math.max(...values);
  const [x, y] = [places.map(({ diameter }) => diameter), places.map(({ speed }) => speed)];
  return {
    x: { label: "specific diameter", from: least([1.25, ...x]), to: most([8, ...x]), log: true },
    y: { label: "specific speed", from: least([0.3, ...y]), to: most([4, ...y]), log: true },
    lines: [goodFans(), ...arms(used, shown)],
    rings: ringsOf(used, shown),
  };
}

/** @returns the same as numbers */
export function suitsTable(used: readonly Used[]): Table {
  return {
    columns: [
      "family",
      "specific speed at its best",
      "specific diameter at its best",
      "specific speed as used",
      "specific diameter as used",
      "share of its best efficiency",
      "specific speed over that of good fans",
    ],
    rows: used.map(({ name, suits }) => [
      name,
      suits.best.speed,
      suits.best.diameter,
      suits.used.speed,
      suits.used.diameter,
      suits.share,
      suits.overLine,
    ]),
  };
}
