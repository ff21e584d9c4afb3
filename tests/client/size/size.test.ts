import { describe, expect, it } from "vitest";
import { bestOf, foremost, replyTo } from "#client/views/size/answer.ts";
import { type Asked, askedFrom, askedQuery } from "#client/views/size/asked.ts";
import { usualNeed } from "#client/views/size/need/address.ts";
import { questionOf } from "#client/views/size/question.ts";
import { seriesSentence, throttlesText } from "#client/views/size/series/seriesWords.ts";
import { settingsOf } from "#client/views/size/settings.ts";
import { panelsOf, sizeTable } from "#client/views/size/sizePlot.ts";
import { needSentence, rowWords, sizeSentence } from "#client/views/size/sizeWords.ts";
import { usedFamilies } from "#client/views/size/suits/suits.ts";
import { suitsPlot, suitsTable } from "#client/views/size/suits/suitsPlot.ts";
import { lineSentence, suitsSentence } from "#client/views/size/suits/suitsWords.ts";
import { diametersOf } from "#shared/book/size/diameters.ts";
import { nearMotors } from "#shared/book/size/nearMotors.ts";
import { pullForHold } from "#shared/decide/size/need.ts";
import { airFrom } from "#shared/physics/air.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const book = demoBook();
const NOTHING: Asked = {
  angle: null,
  margin: null,
  cellVoltage: null,
  motor: null,
  ranges: { ducted: { from: null, to: null }, propeller: { from: null, to: null } },
  family: null,
  need: null,
  drawn: [],
};
const ducted = (from: number, to: number): Pick<Asked, "ranges"> => ({
  ranges: { ...NOTHING.ranges, ducted: { from, to } },
});
const spaces = (text: string) => text.replace(/\s/g, " ");

function asked(id: string, change: Partial<Asked> = {}) {
  const build = book.builds.find((each) => each.id === id)?.data;
  if (!build) throw new Error(`The demo has no ${id}.`);
  const settings = settingsOf(book, build, { ...NOTHING, ...change });
  const put = questionOf(book, settings);
  if (!put) throw new Error("The build has no numbers.");
  return { build, settings, put, reply: replyTo(put.question) };
}

function answered(id: string, change: Partial<Asked> = {}) {
  const { reply, ...rest } = asked(id, change);
  if ("problem" in reply) throw new Error(reply.problem);
  return { ...rest, answer: reply.answered };
}

const pane = answered("pane-crawler", ducted(0.038, 0.062));

describe("the address of Size", () => {
  it("brings everything back that was asked, and nothing where nothing was", () => {
    const all = {
      angle: 153,
      margin: 1.4,
      cellVoltage: 3.6,
      motor: "bell-22",
      ranges: { ducted: { from: 0.03, to: 0.07 }, propeller: { from: 0.09, to: 0.2 } },
      family: "x",
      need: {
        ...usualNeed({ surface: null, skirt: "square-lip", pack: null, motor: null }),
        edge: "thin" as const,
      },
      drawn: [{ blades: 7, exitAngle: 35, inletRatio: 0.5, widthRatio: 0.12 }],
    };
    expect(askedFrom(askedQuery(all))).toEqual(all);
    expect(askedFrom(askedQuery({ ...NOTHING, angle: "worst" })).angle).toBe("worst");
    expect(askedQuery(NOTHING).toString()).toBe("");
  });

  it.each(["on=left", "margin=-1", "cell=0", "from=lots", "to=1e9", "drawn=7x200x0.5x0.1"])(
    "%s: is left out",
    (query) => {
      expect(askedFrom(new URLSearchParams(query))).toEqual(NOTHING);
    },
  );
});

describe("diametersOf", () => {
  it("two ends: round steps that can be printed, both ends in, some dozens of them", () => {
    const sizes = diametersOf({ from: 0.031, to: 0.075 });
    expect([sizes[0], sizes[1], sizes.at(-1)]).toEqual([0.031, 0.032, 0.075]);
    expect(diametersOf({ from: 0.04, to: 0.0401 })).toEqual([0.04, 0.0401]);
  });

  it("ends that are reversed or one: no sizes", () => {
    expect(diametersOf({ from: 0.05, to: 0.04 })).toEqual([]);
    expect(diametersOf({ from: 0.05, to: 0.05 })).toEqual([]);
  });
});

describe("replyTo", () => {
  it("of the demo's crawler: every ducted family with a curve, the build's own first", () => {
    expect(pane.answer.families.map(({ id }) => id)).toEqual([
      "swept-nine",
      "straight-seven",
      "tube-five",
      "pusher-three",
    ]);
    const [side] = pane.put.question.sides;
    expect(pane.answer.pull).toBe(pullForHold(side.numbers.vehicle, pane.settings.hold));
  });

  it("names the family and size of least watts, and what that takes of the air", () => {
    const first = foremost(pane.answer);
    const best = first && bestOf(first);
    const all = pane.answer.families.flatMap(({ rows }) =>
      rows.filter(({ exceeds }) => exceeds.length === 0),
    );
    const least = Math.min(...all.map(({ packPower }) => packPower ?? Number.POSITIVE_INFINITY));
    expect(best?.packPower).toBe(least);
    expect(spaces(sizeSentence(pane.answer))).toMatch(
      /^[A-Z][a-z ]+ at [\d.]+ mm takes least: [\d.]+ W from the pack, wound for [\d ]+ rpm\/V\.$/,
    );
    expect(spaces(needSentence(pane.answer, pane.settings))).toMatch(
      /^1\.50 × on the worst attitude is \d+ g of pull, with cells at 3\.70 V at rest: \d+ Pa and [\d.]+ L\/s, [\d.]+ W in the air/,
    );
  });

  it("draws watts, winding and minutes, and puts every size into the table", () => {
    const [shown] = pane.answer.families;
    expect(panelsOf(pane.answer, shown).map(({ key }) => key)).toEqual(["watts", "kv", "minutes"]);
    const rows = pane.answer.families.reduce((sum, each) => sum + each.rows.length, 0);
    expect(sizeTable(pane.answer, shown, null).rows).toHaveLength(rows);
    expect(rowWords(shown.name, shown.rows[0]).join(" ")).toContain("38");
  });

  it("of a margin that no size keeps its limits with: says the most that can be had, and hatches why", () => {
    const { answer } = answered("pane-crawler", { margin: 4, ...ducted(0.044, 0.0441) });
    expect(foremost(answer)).toBeNull();
    expect(spaces(sizeSentence(answer))).toMatch(
      /^No size makes this pull within every limit; the most that can be had is \d+ g/,
    );
    const [{ plot }] = panelsOf(answer, answer.families[0]);
    expect(plot.regions?.length).toBeGreaterThan(0);
  });

  it("of a propeller's build: propellers alone, without a cavity", () => {
    const { answer } = answered("prop-scout");
    expect(answer.duty).toBeNull();
    expect(answer.families.map(({ id }) => id)).toEqual(["pusher-three"]);
    expect(panelsOf(answer, answer.families[0]).length).toBeGreaterThan(1);
  });

  it("of an attitude that needs nothing: a word, no size", () => {
    const { reply } = asked("pane-crawler", { angle: 0 });
    expect("problem" in reply && reply.problem).toMatch(/stays there by its weight alone/);
  });
});

describe("whether a family suits its duty", () => {
  const used = usedFamilies(pane.put.sides[0], pane.answer);

  it("of each family in a duct: where it is best, where it is used, and in words what that means", () => {
    expect(used.map(({ id }) => id)).toEqual(["swept-nine", "straight-seven", "tube-five"]);
    const [{ suits, row }] = used;
    // N_s by its definition, of the row's own speed, flow and pressure; the air is the book's.
    const { density } = airFrom(pane.put.question.sides[0].numbers.air);
    const head = (row.pressure ?? 0) / density;
    const ofRow = ((row.speed ?? 0) * Math.sqrt(row.flow ?? 0)) / head ** 0.75;
    // The size correction moves ψ by a little.
    expect(Math.abs(suits.used.speed / ofRow - 1)).toBeLessThan(0.05);
    expect(spaces(suitsSentence(used[0]))).toMatch(
      /^Swept nine at [\d.]+ mm runs at \d+ % of its best efficiency/,
    );
    expect(lineSentence(used[0])).toMatch(/good fans/);
    expect(suitsTable(used).rows).toHaveLength(3);
    expect(suitsPlot(used, "swept-nine").rings).toHaveLength(6);
  });

  it("of far too much air: a more axial rotor, and the size at which this one would suit", () => {
    const much = {
      ...used[0].suits,
      share: 0.6,
      used: { speed: 2, diameter: 2 },
      diameter: 0.081,
      overLine: 1.5,
    };
    const words = spaces(suitsSentence({ ...used[0], suits: much }));
    expect(words).toMatch(
      /it moves more air than it is best at .* faster, more axial rotor .* this one would at 81 mm/,
    );
    expect(lineSentence({ ...used[0], suits: much })).toMatch(/turns 50\s%\sfaster/);
    const little = { ...much, used: { speed: 0.1, diameter: 9 }, overLine: 0.5 };
    expect(suitsSentence({ ...used[0], suits: little })).toMatch(/narrower, more radial/);
    expect(lineSentence({ ...used[0], suits: little })).toMatch(/turns 50\s%\sslower/);
  });

  it("of a propeller's side: nothing, it has no cavity", () => {
    expect(usedFamilies(pane.put.sides[1], pane.answer)).toEqual([]);
  });
});

describe("what to print next, in words", () => {
  const print = { diameter: 0.053, throttles: [0.77, 0.52], isTested: false, cut: 0.4 };
  const three = [print, { ...print, diameter: 0.05, cut: 0.3 }, { ...print, diameter: 0.056, cut: 0.2 }];
  it("of three: the first, what it takes off, and all together", () => {
    const words = spaces(seriesSentence("Nine", { known: 0.12, prints: three, together: 0.6 }));
    expect(words).toBe(
      "Print and test Nine at 53 mm first: its curve leaves the watts of its best sizes uncertain by ± 12 % (90 %), and that would take 40 % off it. 53 mm, 50 mm and 56 mm together would take 60 %.",
    );
    expect(spaces(throttlesText("ducted", print))).toBe("77 and 52 %");
    expect(spaces(throttlesText("propeller", print))).toBe("77 to 52 %");
  });

  it("of a size that lies in a drawer: test it again; of none: says so, and why", () => {
    const again = { known: 0.12, prints: [{ ...print, isTested: true }], together: null };
    expect(seriesSentence("Nine", again)).toMatch(/^Test another print of Nine/);
    expect(seriesSentence("Nine", { known: 0.05, prints: [], together: null })).toMatch(/^No print of Nine/);
    expect(seriesSentence("Nine", { known: null, prints: [], together: null })).toMatch(
      /^Nothing of Nine's curve/,
    );
  });
});

describe("nearMotors", () => {
  const [family] = pane.answer.families;
  const best = bestOf(family) ?? family.rows[0];
  const wanted = {
    rotor: family.id,
    diameter: best.diameter,
    kv: best.kv ?? 4000,
    motorConstant: pane.put.question.sides[0].numbers.motor.motorConstant,
    cellVoltage: pane.settings.cellVoltage,
    hold: pane.settings.hold,
  };

  it("lists the book's motors, the nearest winding of that strength first", () => {
    const motors = nearMotors(book, pane.build, wanted);
    expect(motors.map(({ id }) => id).sort()).toEqual(["bell-18", "bell-22", "brushed-20", "coreless-12"]);
    const off = motors.map(({ kv, motorConstant }) =>
      Math.hypot(Math.log(kv / wanted.kv), Math.log(Math.min(1, motorConstant / wanted.motorConstant))),
    );
    expect(off).toEqual([...off].sort((a, b) => a - b));
  });

  it("of the very winding that is wanted: brings the margin that was asked for", () => {
    const [first] = nearMotors(book, pane.build, { ...wanted, kv: 5050 });
    const bell = book.motors.find(({ id }) => id === "bell-18");
    if (!bell) throw new Error("The demo has no bell-18.");
    // A motor of its own: pulls and curves that were taken with the bell motor keep theirs.
    const wound = { ...bell.data, kv: wanted.kv, resistance: best.resistance ?? 1 };
    const motors = [...book.motors, { ...bell, id: "bell-wound-anew", data: wound }];
    const rewound = nearMotors({ ...book, motors }, pane.build, wanted).find(
      ({ id }) => id === "bell-wound-anew",
    );
    expect(first.id).toBe("bell-18");
    // The no-load current stays, so the friction torque moves a little with the winding.
    expect(rewound?.margin).toBeCloseTo(1.5, 1);
  });
});
