import { describe, expect, it } from "vitest";
import { solve } from "#client/state/outcome.ts";
import {
  nameProblem,
  readAngle,
  withAttitude,
  withoutAttitude,
} from "#client/views/attitudes/ownAttitudes.ts";
import { roseOf } from "#client/views/attitudes/rose.ts";
import { demoBook } from "#tests/support/demoBook.ts";

describe("readAngle", () => {
  it.each([
    ["153.5", 153.5],
    [" 153,5° ", 153.5],
    ["90 deg", 90],
    ["0", 0],
    ["180", 180],
  ])("reads “%s”, typed as an inclination, as %s°", (text, angle) => {
    expect(readAngle(text)).toEqual({ angle });
  });

  it.each(["", "steep", "181", "-1", "1e9", "NaN", "12 mm", "90 90"])(
    "names what was read, what is allowed and an example, with “%s” typed, and gives no angle",
    (text) => {
      const read = readAngle(text);
      expect(read).not.toHaveProperty("angle");
      expect(read).toHaveProperty("problem", expect.stringMatching(/allowed: 0°.*180°.*for example “153.5”/));
      if (text !== "") expect(read).toHaveProperty("problem", expect.stringContaining(`“${text}”`));
    },
  );
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
    expect(withoutAttitude(more, more.attitudes.length - 1)).toEqual(build);
  });

  it("appears among the named attitudes, with its own need, once it is added", () => {
    const rose = roseOf(solve(book, withAttitude(build, { name: "Gable", angle: 153.5 })));
    const gable = rose?.named.find((each) => each.title === "Gable");
    expect(gable).toMatchObject({ kind: "own", stand: { angle: 153.5 } });
  });
});
