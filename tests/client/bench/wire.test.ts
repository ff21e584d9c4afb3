import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Draft } from "#client/views/bench/record/draft.ts";
import { LineSplitter, readSerialLine } from "#client/views/bench/wire/serialLine.ts";
import { PullWatch, Watched } from "#client/views/bench/wire/watch.ts";
import { textsOf, withReading } from "#client/views/bench/wire/wireRows.ts";

const said = (line: string) => {
  const read = readSerialLine(line);
  return read && Object.fromEntries(read);
};

describe("readSerialLine", () => {
  it.each([
    ["load=412.3 p=1250", { load: 412.3, p: 1250 }],
    ["load: 412.3 g, rpm = 24000", { load: 412.3, rpm: 24000 }],
    ["p_Pa=-1.5e2;t=3", { p_Pa: -150, t: 3 }],
    ["12.5, 24000, -3", { "value 1": 12.5, "value 2": 24000, "value 3": -3 }],
    ["12.5\t24000", { "value 1": 12.5, "value 2": 24000 }],
    ['{"load":1.5,"unit":"g","on":true}', { load: 1.5 }],
    ["[1,2]", { "value 1": 1, "value 2": 2 }],
  ])("reads %j", (line, expected) => {
    expect(said(line)).toEqual(expected);
  });

  it.each([
    "",
    "boot v1.2 ok",
    "{broken",
    "load=",
    "1,2,x",
    "\u0000\ufffd\ufffd",
    "load=1.2.3",
    '{"a":"b"}',
    "nan",
  ])("takes %j for no reading", (line) => {
    expect(said(line)).toBeNull();
  });
});

describe("LineSplitter", () => {
  it("gives the same lines however the stream is cut", () => {
    const text = "a=1\r\nb=2\nc=3\r\n";
    fc.assert(
      fc.property(fc.uniqueArray(fc.integer({ min: 1, max: text.length - 1 })), (cuts) => {
        const splitter = new LineSplitter();
        const places = [0, ...cuts.sort((a, b) => a - b), text.length];
        const lines = places.slice(1).flatMap((to, i) => splitter.push(text.slice(places[i], to)));
        expect(lines.filter(Boolean)).toEqual(["a=1", "b=2", "c=3"]);
      }),
    );
  });
});

describe("Watched", () => {
  const through = (values: readonly number[], step = 0.1) => {
    const watched = new Watched();
    for (const [i, value] of values.entries()) watched.push({ time: i * step, value });
    return watched;
  };

  it("stands still once it kept within 2 % for a second, and says its mean", () => {
    expect(through([0, 50, ...Array(12).fill(100)]).plateau()?.mean).toBe(100);
    expect(through([0, 50, ...Array(8).fill(100)]).plateau()).toBeNull();
    expect(through(Array.from({ length: 30 }, (_, i) => 100 + i)).plateau()).toBeNull();
  });

  it("keeps its peak, and begins anew where the clock goes back", () => {
    const watched = through(Array(20).fill(7));
    watched.push({ time: -5, value: 3 });
    expect(watched.peak).toBe(7);
    expect(watched.plateau()).toBeNull();
  });
});

describe("PullWatch", () => {
  it("says the greatest load held and the step above it, once the load drops", () => {
    const watch = new PullWatch();
    const found = [0, 100, 200, 300, 410, 430, 90, 0, 0].map((load) => watch.push(load));
    expect(found.filter(Boolean)).toEqual([{ held: 430, letGo: 450 }]);
  });

  it("takes no hand that touches the scale for a pull", () => {
    const watch = new PullWatch();
    const loads = [0, 200, 400, 0, 5, 12, 0, 200, 380, 0];
    expect(loads.map((load) => watch.push(load)).filter(Boolean)).toEqual([
      { held: 400, letGo: 600 },
      { held: 380, letGo: 560 },
    ]);
  });
});

describe("withReading", () => {
  const row = { key: 0, cells: {}, open: [], aside: null };
  const empty: Draft = { kind: "leak", fields: {}, holes: [], rows: [row], units: {} };
  const mapping = { p: { column: "pressure", unit: "Pa" }, t: { column: "", unit: "" } };

  it("fills the empty row, then another each", () => {
    const texts = textsOf(
      new Map([
        ["p", 1250.1234567],
        ["t", 3],
      ]),
      mapping,
    );
    const first = withReading(empty, texts, new Set()).draft;
    const second = withReading(first, { pressure: "900 Pa" }, new Set()).draft;
    expect(second.rows.map(({ cells }) => cells)).toEqual([
      { pressure: "1250.12 Pa" },
      { pressure: "900 Pa" },
    ]);
  });
});
