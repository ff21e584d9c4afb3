import { describe, expect, it } from "vitest";
import type { z } from "zod";
import { explain } from "#shared/model/api/explain.ts";
import { rotorFitRequest } from "#shared/model/api/fits.ts";
import { predictRequest } from "#shared/model/api/predict.ts";
import { pack } from "#shared/model/parts/pack.ts";
import { benchTest } from "#shared/model/tests/index.ts";

function explained(schema: z.ZodType, input: unknown): Record<string, string> {
  const result = schema.safeParse(input);
  if (result.success) throw new Error("the input was taken");
  return Object.fromEntries(
    explain(schema, result.error, input).fields.map(({ path, message }) => [path, message]),
  );
}

const motorTest = (row: object, head: object = {}) => ({
  kind: "motor",
  date: "2026-03-12",
  motor: "m",
  rows: [row],
  ...head,
});

describe("explain, by what is wrong", () => {
  it("a number below its limit: says what was read and what is allowed", () => {
    expect(explained(pack, { name: "x", series: 1, wireResistance: -1 })).toMatchObject({
      wireResistance: "Read -1; allowed: Ω, ≥ 0, at most 100.",
      cell: expect.stringMatching(/^Missing; allowed: an object with capacity, /),
    });
  });

  it("a number that is none: NaN and infinity are named as read", () => {
    const said = explained(pack, { name: "x", series: Number.NaN, wireResistance: Number.POSITIVE_INFINITY });
    expect(said.series).toBe("Read NaN; allowed: a whole number, at least 1, at most 60.");
    expect(said.wireResistance).toBe("Read Infinity; allowed: Ω, ≥ 0, at most 100.");
  });

  it("a wrong unit in a row of a test: names the path down to the unit, with an example", () => {
    const row = {
      voltage: { value: 3, unit: "mm" },
      current: { value: 1, unit: "A" },
      speed: { value: 1, unit: "rpm" },
    };
    const said = explained(benchTest, motorTest(row));
    expect(Object.keys(said)).toEqual(["rows.0.voltage.unit"]);
    expect(said["rows.0.voltage.unit"]).toMatch(/Read ".*mm.*"; allowed: .*V.*for example "3.9 V"/);
  });

  it("a reading without its unit: gives the example that the quantity knows", () => {
    const said = explained(benchTest, motorTest({ voltage: 3, current: { value: 1, unit: "A" } }));
    expect(said["rows.0.voltage"]).toBe(
      'Read 3; allowed: at the speed controller or the motor, under load; an object with value, unit, for example {"value":3.9,"unit":"V"}.',
    );
    expect(said["rows.0.speed"]).toMatch(/^Missing; allowed: .*\{"value":24000,"unit":"rpm"\}/);
  });

  it("unknown keys: one field each, with the keys that are known there", () => {
    const said = explained(benchTest, motorTest({ volts: 3, amps: 1 }, { colour: "green" }));
    expect(said["rows.0.volts"]).toBe(
      'Unknown key "volts"; allowed: voltage, current, speed, noLoad, throttle, setAside.',
    );
    expect(said["rows.0.amps"]).toMatch(/^Unknown key "amps"/);
    expect(said.colour).toMatch(/^Unknown key "colour"; allowed: kind, title, date, /);
  });

  it("a kind of test that there is none of: names the kinds", () => {
    expect(explained(benchTest, { kind: "taste" }).kind).toBe(
      'Read "taste"; allowed: kind one of "curve", "pull", "motor", "leak", "friction", "thrust", "discharge", "ride-height", "weigh-in", "run-log".',
    );
  });

  it("a choice, a union, a date, an identifier, a list: each in its own words", () => {
    const said = explained(predictRequest, { skirt: { edge: "wavy" }, vehicle: { mass: 1, driven: "all" } });
    expect(said["skirt.edge"]).toBe('Read "wavy"; allowed: one of "thin", "square", "rounded".');
    expect(said["vehicle.driven"]).toBe('Read "all"; allowed: one of "both", "front", "rear".');
    expect(explained(rotorFitRequest, { diameter: 0.04, points: [], degree: 9 })).toEqual({
      points: "Read []; allowed: at least 1 in the list.",
      degree: 'Read 9; allowed: a whole number, at least 1, at most 4, or "auto".',
    });
    const head = explained(benchTest, motorTest({}, { motor: "A Motor", date: "yesterday" }));
    expect(head.motor).toBe(
      'Read "A Motor"; allowed: an identifier: lower-case letters, digits and hyphens, at most 64.',
    );
    expect(head.date).toBe('Read "yesterday"; allowed: day of the test, YYYY-MM-DD.');
  });

  it("something else than an object: says what the whole must be", () => {
    expect(explained(pack, [1])[""]).toMatch(/^Read \[1\]; allowed: an object with name, series, /);
  });
});

describe("explain, of an input that is huge", () => {
  /** Throws where anybody asks for what lies behind the beginning. */
  const guarded = <T extends object>(value: T, from: number): T =>
    new Proxy(value, {
      get: (target, key) => {
        if (Number(key) >= from) throw new Error(`place ${String(key)} was read`);
        return Reflect.get(target, key);
      },
    });
  const nested = (depth: number) => {
    let value: unknown[] = [];
    for (let i = 1; i < depth; i++) value = [value];
    return value;
  };

  it("a long list for a number: shows its beginning, and reads no more of it", () => {
    const list = guarded(
      Array.from({ length: 1000 }, (_, i) => i),
      100,
    );
    const said = explained(pack, { name: "x", series: list });
    expect(said.series).toMatch(/^Read \[0,1,2,3,4,.*…; allowed: a whole number/);
  });

  it("lists inside each other, deeper than a stack: shows the beginning", () => {
    const said = explained(pack, { name: "x", series: nested(450_000) });
    expect(said.series).toMatch(/^Read \[{60}…; allowed: /);
  });

  it("a value that just fits: is shown whole, objects and texts as JSON", () => {
    const said = explained(pack, { name: "x", series: { a: [1, "zwei", null], "b c": { d: true } } });
    expect(said.series).toContain('Read {"a":[1,"zwei",null],"b c":{"d":true}}; allowed');
  });

  it("a thousand unknown keys: names the first hundred fields and counts them all", () => {
    const input = Object.fromEntries(Array.from({ length: 1000 }, (_, i) => [`k${i}`, i]));
    const result = pack.safeParse(input);
    if (result.success) throw new Error("the input was taken");
    const { fields, count } = explain(pack, result.error, input);
    expect(fields).toHaveLength(100);
    expect(count).toBeGreaterThanOrEqual(1000);
  });
});
