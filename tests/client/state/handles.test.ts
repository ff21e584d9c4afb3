import { describe, expect, it } from "vitest";
import {
  changed,
  changesFromQuery,
  changesToQuery,
  HANDLES,
  type Handle,
  type HandleKey,
  leftOutOf,
  withChanges,
} from "#client/state/handles.ts";
import { endWords, entryText, withUnit } from "#client/views/match/entry.ts";
import { build } from "#shared/model/build.ts";
import { isGood, readNumber } from "#shared/units/readNumber.ts";

const handle = (key: HandleKey): Handle => {
  const found = HANDLES.find((each) => each.key === key);
  if (!found) throw new Error(`no handle ${key}`);
  return found;
};

const crawler = build.parse({
  name: "invented",
  rotor: "r",
  diameter: 0.042,
  motor: "m",
  pack: "p",
  skirt: "s",
  surface: "g",
  vehicle: { mass: 0.6 },
});

describe("withChanges", () => {
  it("keeps the build as it was, without changes, untouched", () => {
    expect(withChanges(crawler, {})).toEqual(crawler);
  });

  it("puts each value where the model keeps it, with every handle moved, and the schema still takes the build", () => {
    const moved = withChanges(crawler, {
      diameter: 0.05,
      series: 3,
      charge: 0.2,
      duty: 0.8,
      gap: 0.0012,
      mass: 0.7,
      wheelFriction: 0.9,
      temperature: 300,
      pressure: 9e4,
    });
    expect(build.parse(moved)).toMatchObject({
      diameter: 0.05,
      charge: 0.2,
      supply: { duty: 0.8 },
      overrides: { series: 3, gap: 0.0012, wheelFriction: 0.9 },
      vehicle: { mass: 0.7 },
      air: { temperature: 300, pressure: 9e4 },
    });
  });

  it.each(HANDLES.map((each) => [each.key, each] as const))(
    "stays within the model's schema, with %s at either limit, as the field allows",
    (key, { limits }) => {
      for (const value of [limits.min, limits.max]) {
        expect(build.safeParse(withChanges(crawler, { [key]: value })).success).toBe(true);
      }
    },
  );
});

describe("changed", () => {
  it("drops the change, with a value moved back to what it was, so that nothing is left to reset", () => {
    expect(changed({ gap: 0.001, mass: 0.5 }, "gap", 0.0006 + 1e-16, 0.0006)).toEqual({ mass: 0.5 });
  });
});

describe("changes in the address", () => {
  it("come back as they were, through a query, to the last digit", () => {
    const changes = { gap: 0.0012, series: 3, temperature: 288.15 };
    expect(changesFromQuery(new URLSearchParams(changesToQuery(changes)))).toEqual(changes);
  });

  it.each(["gap=abc", "gap=-1", "gap=", "series=2.5", "mass=NaN", "duty=7"])(
    "are left out, for the tampered query %s, and told by the setting and what was asked",
    (query) => {
      const [key, text] = query.split("=");
      const address = new URLSearchParams(query);
      expect(changesFromQuery(address)).toEqual({});
      expect(leftOutOf(address).map(({ handle, text }) => [handle.key, text])).toEqual([[key, text]]);
    },
  );

  it("leave nothing out, with values that can be and words of other views, of which none is told", () => {
    expect(leftOutOf(new URLSearchParams("gap=0.0012&over=b&start=80"))).toEqual([]);
  });
});

describe("HANDLES, as they are read", () => {
  it.each([
    ["gap", "1.2", 0.0012],
    ["gap", "1,2 mm", 0.0012],
    ["charge", "60 %", 0.6],
    ["temperature", "18", 291.15],
    ["pressure", "1004", 100400],
    ["series", "3", 3],
    // 1 in = 25.4 mm, by definition
    ["diameter", "2 in", 0.0508],
    ["mass", "1.2 kg", 1.2],
    ["pressure", "101 kPa", 101e3],
    ["temperature", "68 °F", 293.15],
  ] as const)("%s, typed as %s, is in SI", (key, text, si) => {
    const reading = readNumber(handle(key), text);
    expect(isGood(reading) ? reading.value : reading.message).toBeCloseToRelative(si, 1e-12);
  });

  it.each([
    ["gap", "-0.1"],
    ["gap", "200"],
    ["series", "2.5"],
    ["charge", "130"],
    ["mass", "heavy"],
    ["mass", ""],
    ["temperature", "99"],
    ["gap", "2 kg"],
    ["mass", "3 in"],
  ] as const)(
    "%s, typed as “%s”, is refused with what was read, what is allowed and an example",
    (key, text) => {
      const reading = readNumber(handle(key), text);
      expect(reading).toHaveProperty("message", expect.stringMatching(/allowed: .*for example/));
      if (text !== "") expect(reading).toHaveProperty("message", expect.stringContaining(text));
    },
  );
});

describe("entryText", () => {
  it("shows the text it read, for a finer value than the slider's steps, without rounding it away", () => {
    expect(entryText(handle("gap"), 0.000635)).toBe("0.635");
    expect(entryText(handle("mass"), 0.1385)).toBe("138.5");
    expect(entryText(handle("series"), 3)).toBe("3");
    expect(withUnit(handle("gap"), 0.0006)).toBe("0.60\u202fmm");
  });
});

describe("endWords", () => {
  it("say what holds the slider, at its ends and at what the model takes, and nothing between them", () => {
    expect(endWords(handle("diameter"), 0.042, 0.05)).toBeNull();
    expect(endWords(handle("diameter"), 0.042, 1.6 * 0.042)).toBe(
      "the slider ends here; 2\u202fmm to 2000\u202fmm can be typed",
    );
    expect(endWords(handle("charge"), 0.5, 1)).toBe("no more than 100\u202f% can be set");
    expect(endWords(handle("duty"), 0.5, 0.01)).toBe("no less than 1\u202f% can be set");
  });
});
