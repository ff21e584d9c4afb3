import { describe, expect, it } from "vitest";
import type { z } from "zod";
import { explain } from "#shared/model/api/explain.ts";
import { PARTS, TEST, TESTS } from "#shared/model/limits.ts";
import { type LimitTree, limitsAt } from "#shared/model/limitTree.ts";
import { COLLECTIONS } from "#shared/model/schemas.ts";
import { benchTest } from "#shared/model/tests/index.ts";
import type { Limits } from "#shared/units/limits.ts";
import { EXAMPLES } from "#tests/client/bench/examples.ts";

type Json = { [key: string]: Json } | Json[] | number | string | null;

/** Every limit of a tree with its path, lists by their first entry. */
function leaves(tree: LimitTree, before: readonly string[] = []): [string, Limits][] {
  return Object.entries(tree).flatMap(([key, node]) => {
    const path = [...before, key];
    const isTree = Object.values(node).some((value) => typeof value === "object");
    return isTree ? leaves(node as LimitTree, path) : [[path.join("."), node as Limits]];
  });
}

/** Values on a limit and just outside it; what is not limited is not tried. */
function probes({ min, max, positive, whole }: Limits): { inside: number[]; outside: number[] } {
  const step = (at: number) => (whole ? 1 : Math.max(1e-6, Math.abs(at) * 1e-3));
  const inside = [...(min === undefined ? [] : [min]), ...(max === undefined ? [] : [max])];
  const outside = [
    ...(min === undefined ? [] : [min - step(min)]),
    ...(max === undefined ? [] : [max + step(max)]),
    ...(positive ? [0, -1] : []),
    ...(whole && min !== undefined ? [min + 0.5] : []),
  ];
  return { inside, outside };
}

const LISTS = new Set([
  "honeycombs",
  "sizes",
  "openings",
  "attitudes",
  "cycle",
  "rows",
  "holes",
  "ledger",
  "alternatives",
  "joints",
  "stacks",
  "parts",
]);

/** What else a record must say for its schema to come to the number. */
const BESIDE: Readonly<Partial<Record<keyof typeof PARTS, object>>> = {
  instruments: { measures: "pressure" },
};
/** Kept as typed, in its unit; the instrument measures pressure. */
const TYPED: ReadonlyMap<string, string> = new Map([
  ["absolute", "Pa"],
  ["resolution", "Pa"],
  ["outline.length", "m"],
  ["outline.width", "m"],
  ["outline.cornerRadius", "m"],
]);

/** Of a union, what says which of its kinds a number belongs to. */
function ofKind(key: string, inner: Json): Json {
  if (key !== "made" || typeof inner !== "object" || inner === null) return inner;
  const by = "area" in inner || "thickness" in inner ? "sheet" : "volume";
  return { by, material: "pla", ...inner } as Json;
}

/** What the schema says of one number at a path of an otherwise empty record: refused there, or not. */
function refusedAt(name: keyof typeof PARTS, path: string, value: number): boolean {
  const schema: z.ZodType = COLLECTIONS[name];
  const keys = path.split(".").flatMap((key) => (LISTS.has(key) ? [key, "0"] : [key]));
  const unit = TYPED.get(path);
  const leaf: Json = unit === undefined ? value : { value, unit };
  const record = keys.reduceRight<Json>((inner, key) => {
    if (!/^\d+$/.test(key)) return { [key]: ofKind(key, inner) };
    return key === "1" ? [0.5, inner] : [inner];
  }, leaf);
  const parsed = schema.safeParse({ ...(record as object), ...BESIDE[name] });
  const at = keys.join(".");
  return (parsed.error?.issues ?? []).some((issue) => {
    const where = issue.path.join(".");
    return where === at || where === `${at}.value`;
  });
}

describe("limits of parts and builds, beside the schema", () => {
  const rows = Object.entries(PARTS).flatMap(([name, tree]) =>
    leaves(tree)
      .filter(([path]) => path !== "vehicle.skirtShare" && !path.startsWith("cell.curve"))
      .map(([path, limits]) => [name as keyof typeof PARTS, path, limits] as const),
  );

  it.each(rows)("%s, %s: is allowed on them and refused outside, by both", (name, path, limits) => {
    const { inside, outside } = probes(limits);
    for (const value of inside) expect(refusedAt(name, path, value), `${value}`).toBe(false);
    for (const value of outside) expect(refusedAt(name, path, value), `${value}`).toBe(true);
    expect(limitsAt(PARTS[name], path)).toBe(limits);
  });

  it("are found at a list's entry by its place", () => {
    expect(limitsAt(PARTS.rotors, "sizes.12.diameter")).toEqual({ positive: true, max: 2 });
    expect(limitsAt(PARTS.packs, "cell.curve.3.1")).toEqual({ min: 0.1, max: 10 });
    expect(limitsAt(PARTS.packs, "cell.curve.3.0")).toEqual({ min: 0, max: 1 });
    expect(limitsAt(PARTS.packs, "name")).toBeUndefined();
    expect(limitsAt(PARTS.packs, "cell")).toBeUndefined();
  });
});

/** A stored test with one number put in its place, in SI. */
function withValue(test: object, path: string, value: number): unknown {
  const copy = JSON.parse(JSON.stringify(test)) as Json;
  const keys = path.split(".").flatMap((key) => (LISTS.has(key) ? [key, "0"] : [key]));
  let at = copy as { [key: string]: Json };
  for (const key of keys.slice(0, -1)) {
    at[key] ??= {};
    at = at[key] as { [key: string]: Json };
  }
  const last = keys[keys.length - 1];
  const isBare = last === "count" || last === "percent" || last === "dischargeCoefficient";
  at[last] = isBare ? value : { value, unit: SI_UNITS[last] ?? "" };
  return copy;
}

const SI_UNITS: Readonly<Record<string, string>> = {
  diameter: "m",
  rigMass: "kg",
  duty: "1",
  charge: "1",
  speed: "rad/s",
  pressure: "Pa",
  platePressure: "Pa",
  flow: "m³/s",
  voltage: "V",
  current: "A",
  torque: "N·m",
  density: "kg/m³",
  held: "N",
  letGo: "N",
  gap: "m",
  load: "N",
  height: "m",
  resistance: "Ω",
  throttle: "1",
  slid: "rad",
  thrust: "N",
  reading: "N",
  angle: "rad",
  time: "s",
  thickness: "m",
};

describe("limits of tests, beside the schema", () => {
  const ofKind = EXAMPLES.filter((test, i) => EXAMPLES.findIndex(({ kind }) => kind === test.kind) === i);
  const rows = ofKind.flatMap((test) =>
    leaves(TESTS[test.kind]).map(([path, limits]) => [test.kind, path, limits] as const),
  );

  it.each(rows)("%s, %s: is allowed on them and refused outside, by both", (kind, path, limits) => {
    const test = ofKind.find((each) => each.kind === kind) ?? {};
    const { inside, outside } = probes(limits);
    const unit = kind === "friction" ? "rad" : kind === "discharge" && path === "rows.charge" ? "C" : null;
    const refused = (value: number) => {
      const copy = withValue(test, path, value);
      const text = unit
        ? JSON.stringify(copy).replace(/"unit":"(1|N|rad)"(?=})/g, `"unit":"${unit}"`)
        : JSON.stringify(copy);
      const keys = path.replace("rows", "rows.0");
      const issues = benchTest.safeParse(JSON.parse(text)).error?.issues ?? [];
      return issues.some((issue) => issue.path.join(".").startsWith(keys));
    };
    for (const value of inside) expect(refused(value), `${value}`).toBe(false);
    for (const value of outside) expect(refused(value), `${value}`).toBe(true);
  });

  it.each(leaves({ plate: TEST.plate }))(
    "%s of a plate: is allowed on them and refused outside",
    (path, limits) => {
      const test = EXAMPLES.find((each) => "plate" in each && each.plate);
      const { inside, outside } = probes(limits);
      const keys = path.replace("holes", "holes.0");
      const refused = (value: number) => {
        const changed = withValue(test ?? {}, path, value);
        const { error } = benchTest.safeParse(changed);
        return error !== undefined && explain(benchTest, error, changed).fields[0].path.startsWith(keys);
      };
      for (const value of inside) expect(refused(value), `${value}`).toBe(false);
      for (const value of outside) expect(refused(value), `${value}`).toBe(true);
    },
  );
});
