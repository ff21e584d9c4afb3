import { describe, expect, it } from "vitest";
import type { Book } from "#shared/book/book.ts";
import { leftOutOf, testsLeftOut } from "#shared/book/leftOut/leftOut.ts";
import { resolveBuild } from "#shared/book/resolve.ts";
import type { StoredOf } from "#shared/model/record.ts";
import { type BenchTest, benchTest } from "#shared/model/tests/index.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const demo = demoBook();
const [{ data: build }] = demo.builds;
const q = (value: number, unit: string) => ({ value, unit });

/** The demo with some tests changed, others taken out. */
function withTests(change: (test: BenchTest) => object | null): Book {
  const tests = demo.tests.flatMap((test): StoredOf<"tests">[] => {
    const data = change(test.data);
    return data ? [{ ...test, data: benchTest.parse(data) }] : [];
  });
  return { ...demo, tests };
}

const isOwnPull = (test: BenchTest): test is Extract<BenchTest, { kind: "pull" }> =>
  test.kind === "pull" && test.skirt === build.skirt && test.surface === build.surface;

/** The demo with the first row of each of the build's pull tests changed. */
const withPulls = (row: object) =>
  withTests((test) =>
    isOwnPull(test) ? { ...test, rows: [{ ...test.rows[0], ...row }, ...test.rows.slice(1)] } : test,
  );

const reasons = (book: Book) => testsLeftOut(book, build).map(({ kind, rows, why }) => ({ kind, rows, why }));

describe("the demo", () => {
  it("leaves no test out, build by build", () => {
    for (const { data } of demo.builds) expect(testsLeftOut(demo, data), data.name).toEqual([]);
  });
});

describe("a pull that let go below what it held", () => {
  const wrong = withPulls({ held: q(1400, "g"), letGo: q(1.3, "kg") });

  it("is named, in the units as typed, with its test and row; the others stay in use", () => {
    const [first] = testsLeftOut(wrong, build);
    expect(first).toMatchObject({ kind: "pull", rows: [0] });
    expect(first.why).toBe("let go at 1.3\u202fkg, below the 1400\u202fg it held");
    expect(wrong.tests.find(({ id }) => id === first.id)?.data.title).toBe(first.title);
  });

  it("doesn't keep the rest from calibrating the gap", () => {
    const calibrated = resolveBuild(wrong, build).gap;
    expect(resolveBuild(demo, build).gap.basis).toBe("calibrated");
    expect(calibrated.basis).toBe("calibrated");
  });

  it("set aside by hand: is not named", () => {
    const aside = withPulls({ held: q(1400, "g"), letGo: q(1.3, "kg"), setAside: "misread" });
    expect(reasons(aside)).toEqual([]);
  });

  it("by rounding of the unit alone: is no contradiction", () => {
    expect(reasons(withPulls({ held: q(400, "g"), letGo: q(0.4, "kg") }))).toEqual([]);
  });
});

describe("a slide that held steeper than it slid", () => {
  it("is named with the surface's other parts", () => {
    const book = withTests((test) =>
      test.kind === "friction" && test.surface === build.surface && test.contact === "wheels"
        ? { ...test, rows: [...test.rows, { held: q(45, "°"), slid: q(40, "°") }] }
        : test,
    );
    expect(reasons(book)).toContainEqual({
      kind: "friction",
      rows: [expect.any(Number)],
      why: "slid at 40°, flatter than the 45° at which it held",
    });
  });
});

describe("tests too few to tell anything", () => {
  it("one pull alone: is named", () => {
    let kept = 0;
    const book = withTests((test) => {
      if (!isOwnPull(test)) return test;
      kept += 1;
      return kept === 1 ? { ...test, rows: test.rows.slice(0, 1) } : null;
    });
    expect(reasons(book)).toEqual([
      { kind: "pull", rows: [0], why: "one pull alone doesn't tell the gap. Repeat it" },
    ]);
  });

  it("pulls of a rotor that the book has no curve of: are named with why", () => {
    const book = withTests((test) => (test.kind === "curve" ? null : test));
    const bare = {
      ...book,
      rotors: book.rotors.map((r) => ({ ...r, data: { ...r.data, geometry: undefined } })),
    };
    expect(reasons(bare).filter(({ kind }) => kind === "pull")[0]?.why).toMatch(
      /^the book doesn't know its rotor, motor or pack well enough/,
    );
  });

  it("a motor read at part throttle alone: is named", () => {
    const book = withTests((test) =>
      test.kind === "motor" && test.motor === build.motor
        ? { ...test, rows: test.rows.map((row) => ({ ...row, throttle: q(60, "%") })) }
        : test,
    );
    expect(reasons(book).find(({ kind }) => kind === "motor")?.why).toMatch(
      /^no row was read at full throttle/,
    );
  });

  it("a tilt test that never slid: is named with what to do", () => {
    const book = withTests((test) =>
      test.kind === "friction" ? { ...test, rows: [{ held: q(30, "°"), slid: null }] } : test,
    );
    expect(reasons(book).find(({ kind }) => kind === "friction")?.why).toMatch(/never slid.*Tilt further/);
  });
});

describe("leftOutOf, several parts at once", () => {
  it("names a test once, whichever of them it is of", () => {
    const wrong = withPulls({ held: q(1400, "g"), letGo: q(1.3, "kg") });
    const asked = {
      rotors: demo.rotors.map(({ id }) => id),
      motors: demo.motors.map(({ id }) => id),
      packs: demo.packs.map(({ id }) => id),
      skirts: demo.skirts.map(({ id }) => id),
      surface: build.surface,
      gear: build.gear,
      uncertainty: build.uncertainty,
    };
    const named = leftOutOf(wrong, asked).map(({ id, why }) => `${id} ${why}`);
    expect(named.length).toBeGreaterThan(0);
    expect(new Set(named).size).toBe(named.length);
  });
});
