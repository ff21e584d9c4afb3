import { describe, expect, it } from "vitest";
import { SURFACES } from "#seed-data/truth.ts";
import type { Book } from "#shared/book/book.ts";
import { surfaceRoughness } from "#shared/book/roughnessBasis.ts";
import { EDGE_LOSS, gapFlow } from "#shared/physics/restriction/lipGap.ts";
import { demoBook } from "#tests/support/demoBook.ts";
import { normals } from "#tests/support/normals.ts";

const demo = demoBook();
const [skirt, otherSkirt] = demo.skirts;
const template = demo.tests.find(({ data }) => data.kind === "leak");
if (template?.data.kind !== "leak" || !skirt) throw new Error("the demo has no leak test");
const leak = template.data;
const AIR = { density: 1.2, viscosity: 1.81e-5 };
const GAP = 5e-4;
const ROUGH = 1.5e-4;

const surfaceOf = (id: string, roughness: number) => ({
  ...demo.surfaces[0],
  id,
  data: { ...demo.surfaces[0].data, name: id, roughness, uncertainty: {} },
});

/** A leak test that the lip-gap law made, in the air of the template's day. */
function test(
  id: string,
  surface: string,
  stand: number,
  gap = GAP,
  of = skirt,
  noise: () => number = () => 0,
) {
  const { perimeter, land, edge, lossSum } = of.data;
  const lip = { perimeter, land, lossSum: lossSum ?? EDGE_LOSS[edge], height: gap + stand };
  const rows = [80, 160, 320, 640].map((pressure) => ({
    pressure: { value: pressure, unit: "Pa" },
    flow: { value: 1000 * gapFlow(lip, AIR, pressure) * (1 + noise()), unit: "L/s" },
  }));
  const { plate: _, air: _air, ...rest } = leak;
  const data = {
    ...rest,
    skirt: of.id,
    surface,
    flowFrom: "known-flow" as const,
    gap: { value: gap * 1e3, unit: "mm" },
    rows,
  };
  return { ...template, id, data } as Book["tests"][number];
}

function bookOf(tests: readonly Book["tests"][number][], roughnesses: Record<string, number>): Book {
  const surfaces = Object.entries(roughnesses).map(([id, roughness]) => surfaceOf(id, roughness));
  return { ...demo, surfaces, tests };
}

function ask(tests: readonly Book["tests"][number][], roughnesses: Record<string, number>, id = "board") {
  const book = bookOf(tests, roughnesses);
  const surface = book.surfaces.find((each) => each.id === id);
  if (!surface) throw new Error("no such surface");
  return surfaceRoughness(book, surface);
}

describe("surfaceRoughness, leak tests made with a known allowance", () => {
  const plain = { board: 5e-5, glass: 0 };

  it("measures it separately by a test on it and one on glass, the density of either day the test's own", () => {
    const found = ask([test("a", "board", ROUGH), test("b", "glass", 0)], plain);
    expect(found.basis).toBe("measured separately");
    // The rows are made at 1.2 kg/m³ and read at 20 °C, 50 %: 1.199 kg/m³ on both sides.
    expect(found.value).toBeCloseToRelative(ROUGH, 2e-3);
    expect(found.testIds).toEqual(["a", "b"]);
    expect(found.against?.id).toBe("glass");
    expect(found.missing).toBeNull();
  });

  it("adds the stated roughness of a reference that isn't glass, and takes the smoothest there is", () => {
    const tests = [test("a", "board", ROUGH), test("b", "paint", 4e-5), test("c", "glass", 0)];
    const all = { board: 1e-4, paint: 4e-5, glass: 0 };
    expect(ask(tests.slice(0, 2), all).value).toBeCloseToRelative(ROUGH, 2e-3);
    expect(ask(tests.slice(0, 2), all).against?.id).toBe("paint");
    expect(ask(tests, all).against?.id).toBe("glass");
  });

  it("gives a standard error that shrinks with repeats", () => {
    const noise = normals(13);
    const pair = (n: number) =>
      Array.from({ length: n }, (_, i) => [
        test(`a${i}`, "board", ROUGH, GAP, skirt, () => 0.01 * noise()),
        test(`b${i}`, "glass", 0, GAP, skirt, () => 0.01 * noise()),
      ]).flat();
    const [one, many] = [ask(pair(1), plain), ask(pair(12), plain)];
    expect(many.sd).toBeLessThan((one.sd ?? 0) / 2);
    expect(Math.abs(many.value - ROUGH)).toBeLessThan(3 * (many.sd ?? 0));
  });
});

describe("surfaceRoughness, tests that can't be compared", () => {
  it.each([
    ["another gap", test("b", "glass", 0, 8e-4)],
    ["another skirt", test("b", "glass", 0, GAP, otherSkirt)],
  ])("with %s: the stated value stands, and what to measure is said", (_, second) => {
    const found = ask([test("a", "board", ROUGH), second], { board: 5e-5, glass: 0 });
    expect(found).toMatchObject({ basis: "stated", value: 5e-5, told: null, testIds: [] });
    expect(found.missing).toMatch(new RegExp(`leak test of ${skirt.data.name} on glass`));
  });

  it("with no leak test on it, or rows set aside: says so", () => {
    expect(ask([test("b", "glass", 0)], { board: 5e-5, glass: 0 }).missing).toMatch(/on board and on glass/);
    const aside = test("a", "board", ROUGH);
    const rows = (aside.data.rows as { setAside?: string }[]).map((row) => ({ ...row, setAside: "wet" }));
    const left = { ...aside, data: { ...aside.data, rows } } as Book["tests"][number];
    expect(ask([left, test("b", "glass", 0)], { board: 5e-5, glass: 0 }).basis).toBe("stated");
  });

  it("with a difference below its scatter: not used, though told", () => {
    const noise = normals(4);
    const found = ask(
      [
        test("a", "board", 1e-6, GAP, skirt, () => 0.05 * noise()),
        test("b", "glass", 0, GAP, skirt, () => 0.05 * noise()),
      ],
      { board: 5e-5, glass: 0 },
    );
    expect(found.basis).toBe("stated");
    expect(found.told).not.toBeNull();
    expect(found.missing).toMatch(/no more than their scatter/);
  });

  it("of two stated alike, the one that leaks less is the reference of the other", () => {
    const tests = [test("a", "board", ROUGH), test("b", "glass", 0)];
    expect(ask(tests, { board: 0, glass: 0 }, "board").value).toBeCloseToRelative(ROUGH, 2e-3);
    expect(ask(tests, { board: 0, glass: 0 }, "glass").basis).toBe("stated");
    expect(ask(tests, { board: 0, glass: 0 }, "glass").missing).toMatch(/smoother of the two/);
  });

  it("tighter than a surface stated as smoother: the stated value stands, both are to be repeated", () => {
    const found = ask([test("a", "board", 0), test("b", "glass", ROUGH)], { board: 5e-5, glass: 0 });
    expect(found).toMatchObject({ basis: "stated", value: 5e-5 });
    expect(found.missing).toMatch(/Repeat both/);
  });
});

describe("surfaceRoughness, the invented demo", () => {
  it("finds the roof pane's allowance from the square lip on it and on the side pane, within three of its uncertainties of what the rows were made with", () => {
    const roof = demo.surfaces.find(({ id }) => id === "roof-pane");
    if (!roof) throw new Error("no roof pane");
    const found = surfaceRoughness(demo, roof);
    expect(found.basis).toBe("measured separately");
    expect(found.against?.id).toBe("side-pane");
    expect(Math.abs(found.value - SURFACES["roof-pane"].roughness)).toBeLessThan(3 * (found.sd ?? 0));
  });
});
