import { describe, expect, it } from "vitest";
import { formErrors, summaryOf } from "#client/views/bench/record/fieldErrors.ts";
import { writeDraft } from "#client/views/bench/record/writeDraft.ts";
import { PLATE_CURVE } from "./examples.ts";

const SENT = { rowKeys: [0, 4, 7], holeKeys: [2, 5] };
const error = (path: string, message = "wrong") => ({ path, message });

describe("formErrors, the server's paths by the form's own", () => {
  it.each([
    ["diameter.value", "diameter"],
    ["air.temperature.unit", "air.temperature"],
    ["rows.2.pressure.unit", "rows.7.pressure"],
    ["rows.1.open.0", "rows.4.open"],
    ["rows.1", "rows.4"],
    ["rows", "rows"],
    ["plate.holes.1.diameter.value", "plate.holes.5.diameter"],
    ["plate", "plate"],
    ["rotor", "rotor"],
  ])("%s belongs to %s", (path, expected) => {
    expect([...formErrors([error(path)], SENT)]).toEqual([[expected, "wrong"]]);
  });

  it("joins what is said of a number and of its unit", () => {
    const errors = formErrors(
      [error("rows.0.pressure.value", "One."), error("rows.0.pressure.unit", "Two.")],
      SENT,
    );
    expect([...errors]).toEqual([["rows.0.pressure", "One. Two."]]);
  });

  it("says a message once that stands on two counts of one row", () => {
    const errors = formErrors([error("rows.0.open.0"), error("rows.0.open.1")], SENT);
    expect([...errors]).toEqual([["rows.0.open", "wrong"]]);
  });
});

describe("summaryOf, each error with the field's name on the screen", () => {
  it("counts rows and holes as they stand in the form", () => {
    const draft = writeDraft(PLATE_CURVE);
    const paths = [
      "rows.2.pressure",
      "rows.1.open",
      "plate.holes.0.count",
      "air.humidity",
      "rows",
      "elsewhere",
    ];
    const lines = summaryOf(new Map(paths.map((path) => [path, "wrong"])), draft);
    expect(lines.map(({ label }) => label)).toEqual([
      "Point 3, pressure",
      "Point 2, open holes",
      "Hole 1, count",
      "Humidity",
      "Points",
      "elsewhere",
    ]);
  });
});
