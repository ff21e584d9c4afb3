import { describe, expect, it } from "vitest";
import { solve } from "#client/state/outcome.ts";
import { INCLINATION, nameProblem, withAttitude } from "#client/views/attitudes/ownAttitudes.ts";
import { removal, removalQuestion, removedText, undone } from "#client/views/attitudes/removal.ts";
import { roseOf } from "#client/views/attitudes/rose.ts";
import { isGood, readNumber } from "#shared/units/readNumber.ts";
import { demoBook } from "#tests/support/demoBook.ts";

describe("INCLINATION, as it is read", () => {
  it.each([
    ["153.5", 153.5],
    [" 153,5° ", 153.5],
    ["90 deg", 90],
    ["1.5 rad", 85.94366926962348],
    ["0", 0],
    ["180", 180],
  ])("“%s”, typed as an inclination, is %s°", (text, angle) => {
    const reading = readNumber(INCLINATION, text);
    expect(isGood(reading) ? reading.value : reading.message).toBeCloseTo(angle, 10);
  });

  it.each(["", "steep", "181", "-1", "1e9", "NaN", "90 90"])(
    "names what was read, what is allowed and an example, with “%s” typed, and gives no angle",
    (text) => {
      const reading = readNumber(INCLINATION, text);
      expect(reading).toHaveProperty(
        "message",
        expect.stringMatching(/allowed: 0°.*180°.*for example "153.5°"/),
      );
      if (text !== "") expect(reading).toHaveProperty("message", expect.stringContaining(`"${text}"`));
    },
  );

  it("names the units, with a length typed", () => {
    expect(readNumber(INCLINATION, "12 mm")).toHaveProperty(
      "message",
      expect.stringMatching(/allowed: °, rad/),
    );
  });
});

describe("attitudes of a build", () => {
  const book = demoBook();
  const build = book.builds[0].data;

  it.each(["", "   ", "Roof pane", "a".repeat(121)])(
    "refuses the name “%s”, with an example, in words",
    (name) => {
      expect(nameProblem(name, [{ name: "Roof pane", angle: 153 }])).toMatch(/for example/);
    },
  );

  it("refuses a thirteenth, with any name, and says what to do", () => {
    const full = Array.from({ length: 12 }, (_, i) => ({ name: `pane ${i}`, angle: i }));
    expect(nameProblem("One more", full)).toMatch(/12 attitudes.*remove one/);
  });

  it("adds one and takes it out again, with its name trimmed, and touches nothing else", () => {
    const more = withAttitude(build, { name: " Gable ", angle: 153.5 });
    expect(more.attitudes.at(-1)).toEqual({ name: "Gable", angle: 153.5 });
    expect(removal(more, more.attitudes.length - 1).after).toEqual(build);
  });

  it("appears among the named attitudes, with its own need, once it is added", () => {
    const rose = roseOf(solve(book, withAttitude(build, { name: "Gable", angle: 153.5 })));
    const gable = rose?.named.find((each) => each.title === "Gable");
    expect(gable).toMatchObject({ kind: "own", stand: { angle: 153.5 } });
  });
});

describe("an attitude that is removed", () => {
  const part = (angle: number, share: number) => ({ angle, share, driveCurrent: 0.8, moving: true });
  const plain = { ...demoBook().builds[0].data, cycle: undefined };
  const build = {
    ...plain,
    attitudes: [
      { name: "Roof pane", angle: 153 },
      { name: "Gable", angle: 120 },
    ],
    cycle: [part(153, 0.4), part(90, 0.45), part(180, 0.15)],
  };

  it("takes its part of the drive cycle along, and the others' shares grow in proportion to make the whole", () => {
    const { after } = removal(build, 0);
    expect(after.attitudes).toEqual([{ name: "Gable", angle: 120 }]);
    expect(after.cycle?.map(({ angle }) => angle)).toEqual([90, 180]);
    // 0.45/0.6 and 0.15/0.6
    expect(after.cycle?.[0].share).toBeCloseTo(0.75, 12);
    expect(after.cycle?.[1].share).toBeCloseTo(0.25, 12);
    expect(removalQuestion(build, 0)).toMatch(/40\s% of the time there.*grow/);
  });

  it("leaves the drive cycle alone, where the cycle doesn't go there or another attitude has the angle", () => {
    expect(removal(build, 1).after.cycle).toBe(build.cycle);
    const twin = { ...build, attitudes: [...build.attitudes, { name: "Ridge side", angle: 153 }] };
    expect(removal(twin, 0).after.cycle).toBe(build.cycle);
    expect(removalQuestion(twin, 0)).not.toMatch(/cycle/);
  });

  it("leaves no drive cycle, where the cycle is nowhere else, and says so before", () => {
    const alone = { ...build, cycle: [part(153, 1)] };
    expect(removalQuestion(alone, 0)).toMatch(/no drive cycle is left/);
    expect(removal(alone, 0).after).not.toHaveProperty("cycle");
  });

  it("comes back at its place with its part of the cycle, undone, and keeps what was changed since", () => {
    const gone = removal(build, 0);
    expect(removedText(gone)).toMatch(/^Removed Roof pane 153°, with its 40\s% of the drive cycle\.$/);
    expect(undone(gone.after, gone)).toEqual({ build });
    const since = { ...gone.after, name: "renamed", cycle: [part(90, 1)] };
    const back = undone(since, gone);
    expect("build" in back && back.build).toMatchObject({ name: "renamed", cycle: [part(90, 1)] });
    expect("build" in back && back.build.attitudes).toEqual(build.attitudes);
  });

  it("does not come back, with its name taken since, and says why", () => {
    const gone = removal(build, 0);
    const taken = { ...gone.after, attitudes: [{ name: "Roof pane", angle: 140 }] };
    expect(undone(taken, gone)).toHaveProperty("problem", expect.stringMatching(/already/));
  });
});
