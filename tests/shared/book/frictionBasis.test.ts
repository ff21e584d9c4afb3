import { describe, expect, it } from "vitest";
import type { Book } from "#shared/book/book.ts";
import { skirtFriction, wheelFriction } from "#shared/book/frictionBasis.ts";
import type { FrictionTest } from "#shared/model/tests/friction.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const demo = demoBook();
const [surface] = demo.surfaces;
const [skirt, other] = demo.skirts;
const tangent = (degrees: number) => Math.tan((degrees * Math.PI) / 180);

/** A tilt test in which it slid at this angle every time. */
function tilt(id: string, slid: number, change: Partial<FrictionTest>) {
  const data: FrictionTest = {
    kind: "friction",
    title: "",
    date: "2026-03-01",
    note: "",
    surface: surface.id,
    contact: "skirt",
    skirt: null,
    instruments: {},
    rows: [1, 2, 3].map(() => ({ held: null, slid: { value: slid, unit: "°" } })),
    ...change,
  };
  return { ...demo.tests[0], id, data };
}

const bookOf = (...tests: ReturnType<typeof tilt>[]): Book => ({ ...demo, tests });

describe("skirtFriction", () => {
  it("counts this skirt's own tilt tests and those that name none, on this surface, and no others", () => {
    const book = bookOf(
      tilt("own", 20, { skirt: skirt.id }),
      tilt("any", 20, { skirt: null }),
      tilt("another skirt", 35, { skirt: other.id }),
      tilt("wheels", 36, { contact: "wheels" }),
      tilt("another surface", 37, { surface: demo.surfaces[1].id, skirt: skirt.id }),
    );
    const found = skirtFriction(book, surface, skirt);
    expect(found.testIds).toEqual(["own", "any"]);
    expect(found.value).toBeCloseToRelative(tangent(20), 1e-12);
    expect(skirtFriction(book, surface, other).testIds).toEqual(["any", "another skirt"]);
  });

  it("with tests of another skirt alone: is as stated, by the surface first, else by the skirt", () => {
    const book = bookOf(tilt("another skirt", 35, { skirt: other.id }));
    const bare = { ...surface, data: { ...surface.data, skirtFriction: undefined, uncertainty: {} } };
    const own = { ...skirt, data: { ...skirt.data, friction: 0.31, uncertainty: { friction: 0.04 } } };
    const stated = {
      ...bare,
      data: { ...bare.data, skirtFriction: 0.27, uncertainty: { skirtFriction: 0.02 } },
    };
    expect(skirtFriction(book, bare, own)).toEqual({
      basis: "stated",
      value: 0.31,
      uncertainty: 0.04,
      testIds: [],
    });
    expect(skirtFriction(book, stated, own)).toMatchObject({ value: 0.27, uncertainty: 0.02 });
  });
});

describe("wheelFriction", () => {
  it("counts tilt tests of the wheels alone; a row set aside is out of it", () => {
    const rows = [
      { held: null, slid: { value: 30, unit: "°" } },
      { held: null, slid: { value: 30, unit: "°" } },
      { held: null, slid: { value: 50, unit: "°" }, setAside: "wet" },
    ];
    const book = bookOf(tilt("wheels", 30, { contact: "wheels", rows }), tilt("skirt", 20, {}));
    const found = wheelFriction(book, surface, undefined);
    expect(found).toMatchObject({ basis: "measured", testIds: ["wheels"] });
    expect("value" in found ? found.value : 0).toBeCloseToRelative(tangent(30), 1e-12);
  });

  // u(μ) = (1 + μ²)·u(θ), JCGM 100:2008, 5.1.2; at 45° twice the tilt's own.
  it("carries the board's own uncertainty, the largest of the tests'", () => {
    const angle = (absolute: number) => ({ angle: { absolute: { value: absolute, unit: "°" } } });
    const book = bookOf(
      tilt("one", 45, { contact: "wheels", instruments: angle(0.2) }),
      tilt("two", 45, { contact: "wheels", instruments: angle(0.5) }),
    );
    const found = wheelFriction(book, surface, undefined);
    const uncertainty = "uncertainty" in found ? found.uncertainty : null;
    expect(uncertainty).toBeCloseToRelative((2 * 0.5 * Math.PI) / 180, 1e-9);
  });

  it("with neither test nor statement: is missing, and asks for a friction test; a what-if stands before all", () => {
    const bare = { ...surface, data: { ...surface.data, wheelFriction: undefined } };
    expect(wheelFriction(bookOf(), bare, undefined)).toMatchObject({
      basis: "missing",
      missing: { path: "friction", test: "friction" },
    });
    const book = bookOf(tilt("wheels", 30, { contact: "wheels" }));
    expect(wheelFriction(book, surface, 0.8)).toMatchObject({
      basis: "what-if",
      value: 0.8,
      uncertainty: null,
    });
  });
});
