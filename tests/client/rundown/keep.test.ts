import { describe, expect, it } from "vitest";
import { answerTo } from "#client/views/rundown/answer.ts";
import { coursesOf } from "#client/views/rundown/keep/courses.ts";
import { setting, sideBySide } from "#client/views/rundown/keep/keepWords.ts";
import { keepFor, type Wish, wishFrom, wishText } from "#client/views/rundown/keep/wish.ts";
import { momentWords } from "#client/views/rundown/momentWords.ts";
import { panelsOf } from "#client/views/rundown/panels.ts";
import { rundownTable } from "#client/views/rundown/table.ts";
import { followRun } from "#shared/physics/rundown.ts";
import { answered, question } from "./examples.ts";

const spaces = (text: string) => text.replace(/\s/g, " ");
const light = {
  ...question,
  input: { ...question.input, vehicle: { ...question.input.vehicle, mass: 0.5 } },
};
const wish: Wish = { kind: "margin", margin: 1.5, angle: "worst" };

describe("a wish in the address", () => {
  it.each<[string, Wish]>([
    ["1200", { kind: "suction", pressure: 1200 }],
    ["2.5N", { kind: "thrust", thrust: 2.5 }],
    ["1.5@153", { kind: "margin", margin: 1.5, angle: 153 }],
    ["1.5@worst", wish],
  ])("%s: is read and written back", (text, each) => {
    expect(wishFrom(text)).toEqual(each);
    expect(wishText(each)).toBe(text);
  });

  it.each([null, "", "much", "-3", "0", "0N", "manyN", "1.5@", "1.5@left", "0.5@90", "1.5@200"])(
    "%s: can't be read, and nothing is kept",
    (text) => {
      expect(wishFrom(text)).toBeNull();
    },
  );
});

describe("answerTo with a controller", () => {
  const kept = answerTo({ ...light, keep: wish });

  it("that keeps a margin on the worst attitude: that margin there from the start, and longer than full throttle", () => {
    const worst = kept.tracks.find(({ key }) => key === "worst");
    expect(worst?.margins[0]).toBeCloseToRelative(1.5, 1e-6);
    const [full, own] = kept.kept?.courses ?? [];
    expect([full.key, own.key]).toEqual(["full", "kept"]);
    expect(own.holds ?? 0).toBeGreaterThan(full.holds ?? 0);
    expect(own.end).toBe(kept.end.time);
  });

  it("shows the throttle: in a plot of its own, in the table and at every moment", () => {
    expect(panelsOf(kept).map(({ key }) => key)[1]).toBe("throttle");
    expect(rundownTable(kept).columns).toContain("throttle, %");
    expect(spaces(momentWords(kept, "0").join(" "))).toMatch(/throttle \d\d(\.\d+)? %/);
    expect(panelsOf(answerTo(light)).map(({ key }) => key)).not.toContain("throttle");
  });

  it("beside a build at part throttle: three courses", () => {
    const supply = { ...light.input.supply, duty: 0.9 };
    const input = { ...light.input, supply, angles: [90], keep: keepFor(light.input, wish) };
    const courses = coursesOf(input, followRun(input));
    expect(courses.map(({ key }) => key)).toEqual(["full", "fixed", "kept"]);
    expect(courses[1].end).toBe(followRun({ ...input, keep: null }).end.time);
  });
});

describe("the words of a kept suction", () => {
  const course = { duty: 1, target: 200, end: 500, hottest: 330 } as const;
  const run = {
    wish,
    keep: { pressure: 1184.2 },
    units: { pressure: "Pa", thrust: "g" },
    dutyAtStart: 0.71,
    fullThrottleFrom: 480,
    courses: [
      { ...course, key: "full", holds: 342 },
      { ...course, key: "kept", holds: 564, duty: 0.71 },
    ],
  } as const;

  it("set the minutes side by side, the kept ones first", () => {
    expect(spaces(sideBySide(answered([]), run))).toBe(
      "Holds for 9.4 min keeping 1.50 × on the worst attitude, 5.7 min at full throttle.",
    );
  });

  it.each([
    [
      480,
      "Set the controller to 1184 Pa: 71 % throttle at the start; from 8.0 min on full throttle isn't enough.",
    ],
    [
      null,
      "Set the controller to 1184 Pa: 71 % throttle at the start, and never full throttle before the charge ends.",
    ],
    [0, "Set the controller to 1184 Pa; even on this charge full throttle isn't enough for it."],
  ])("say what to set, full throttle from %s s on", (fullThrottleFrom, words) => {
    expect(spaces(setting({ ...run, fullThrottleFrom }))).toBe(words);
  });

  it("say it in the unit that the maker reads: mmH2O, and a propeller's thrust in grams", () => {
    const units = { pressure: "mmH2O", thrust: "g" };
    // 1184.2 Pa over 9.80665 Pa
    expect(spaces(setting({ ...run, units }))).toMatch(/^Set the controller to 12[01](\.\d)? mmH2O:/);
    const open = { ...run, units, keep: { thrust: 2.5 } };
    expect(spaces(setting(open))).toMatch(/^Set the controller to 255 g:/);
  });
});
