import { describe, expect, it } from "vitest";
import { besideOf } from "#client/views/attitudes/beside.ts";
import { resolveBuild } from "#shared/book/resolve.ts";
import { predict } from "#shared/physics/predict.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const book = demoBook();
const [shown] = book.builds.filter(({ id }) => id === "pane-crawler");

describe("besideOf, builds of the demo laid side by side", () => {
  it("has the margins of each at the shown build's attitudes, as the prediction of each gives them", () => {
    const { rows, columns } = besideOf(book, shown, ["ridge-runner", "none"]);
    expect(rows).toEqual(["Ceiling 180°", "Wall 90°", "Roof pane 153°", "Worst"]);
    expect(columns.map(({ id }) => id)).toEqual(["pane-crawler", "ridge-runner"]);
    const ridge = book.builds.find(({ id }) => id === "ridge-runner");
    const input = ridge && resolveBuild(book, ridge.data).input;
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
      ...book,
      tests: [],
      rotors: book.rotors.map((r) => ({ ...r, data: { ...r.data, geometry: undefined } })),
    };
    const { rows, columns } = besideOf(untested, shown, []);
    expect(columns[0].margins).toEqual(rows.map(() => null));
  });
});
