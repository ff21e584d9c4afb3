import { afterEach, describe, expect, it } from "vitest";
import { type Changes, withChanges } from "#client/state/handles.ts";
import { solve } from "#client/state/outcome.ts";
import { matchPlot } from "#client/views/match/matchPlot.ts";
import { type Picture, pictureOf, steadied } from "#client/views/match/picture.ts";
import { showUnitsOf, UNIT_SETS } from "#shared/units/showing.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const book = demoBook();
const build = book.builds.find(({ id }) => id === "pane-crawler")?.data;
if (!build) throw new Error("The demo has no pane crawler.");

function picture(changes: Changes): Picture {
  const made = build && pictureOf(book, solve(book, withChanges(build, changes)));
  if (!made) throw new Error("no picture");
  return made;
}

const plotOf = (of: Picture | null) =>
  of &&
  matchPlot({ picture: of, ghost: null, overlays: [], fan: "fan", leak: "leak", duration: 0, spread: null });

afterEach(() => showUnitsOf(() => UNIT_SETS.metric));

describe("a picture while a setting is moved", () => {
  const before = picture({});

  it("of the gap: keeps the rotor's curves and the readings, moves the leak", () => {
    const after = steadied(picture({ gap: 0.9e-3 }), before);
    expect(after?.curves.rest).toBe(before.curves.rest);
    expect(after?.curves.full).toBe(before.curves.full);
    expect(after?.measured).toBe(before.measured);
    expect(after?.curves.leak).not.toBe(before.curves.leak);
  });

  it.each<Changes>([
    { gap: 0.9e-3 },
    { charge: 0.4 },
    { diameter: 0.045 },
    { temperature: 303 },
    { mass: 0.5 },
  ])("of %o: says the same as one that keeps nothing", (changes) => {
    const fresh = picture(changes);
    expect(steadied(fresh, before)).toEqual(fresh);
    expect(plotOf(steadied(picture(changes), before))).toEqual(plotOf(fresh));
  });

  it("of the charge, of the size: carries the readings to the new speed", () => {
    for (const changes of [{ charge: 0.4 }, { diameter: 0.045 }]) {
      const after = picture(changes);
      expect(after.measured.length).toBe(before.measured.length);
      expect(after.measured[3].pressure).not.toBe(before.measured[3].pressure);
    }
  });

  it("in other units: is placed, and its readings worded, in those", () => {
    const metric = plotOf(before);
    showUnitsOf(() => UNIT_SETS.inch);
    const inch = plotOf(picture({}));
    expect(inch?.lines?.[0].points[5].y).not.toBe(metric?.lines?.[0].points[5].y);
    expect(inch?.marks?.[3].y).not.toBe(metric?.marks?.[3].y);
    expect(picture({}).measured[3].read).not.toBe(before.measured[3].read);
  });
});
