import { describe, expect, it } from "vitest";
import { besideOf } from "../../../client/views/attitudes/beside.ts";
import { resolveBuild } from "../../../shared/book/resolve.ts";
import { predict } from "../../../shared/physics/predict.ts";
import { demoBench } from "../../support/demoBench.ts";

const bench = demoBench();
const [shown] = bench.builds.filter(({ id }) => id === "pane-crawler");

describe("besideOf, builds of the demo laid side by side", () => {
  it("has the margins of each at the shown build's attitudes, as the prediction of each gives them", () => {
    const { rows, columns } = besideOf(bench, shown, ["ridge-runner", "none"]);
    expect(rows).toEqual(["Ceiling 180°", "Wall 90°", "Roof pane 153°", "Worst"]);
    expect(columns.map(({ id }) => id)).toEqual(["pane-crawler", "ridge-runner"]);
    const ridge = bench.builds.find(({ id }) => id === "ridge-runner");
    const input = ridge && resolveBuild(bench, ridge.data).input;
    if (!input) throw new Error("The demo's ridge runner has numbers.");
    const { attitudes, worst } = predict(input, [180, 90, 153]);
    attitudes.forEach(({ parked, driving }, i) => {
      expect(columns[1].margins[i]).toMatchObject({ parked: parked.margin, driving: driving.margin });
    });
    expect(columns[1].margins[3]).toEqual({
      angle: worst.parked.angle,
      parked: worst.parked.margin,
      driving: worst.driving.margin,
    });
  });

  it("a build without numbers keeps its column, with no margin in it", () => {
    const untested = {
      ...bench,
      tests: [],
      rotors: bench.rotors.map((r) => ({ ...r, data: { ...r.data, geometry: undefined } })),
    };
    const { rows, columns } = besideOf(untested, shown, []);
    expect(columns[0].margins).toEqual(rows.map(() => null));
  });
});
