import { describe, expect, it } from "vitest";
import { dayOf, firstDraft, lastOf, sizesOf } from "#client/views/bench/forms/defaults.ts";
import type { Book } from "#shared/book/book.ts";
import type { BenchTest } from "#shared/model/tests/index.ts";
import { showUnitsOf } from "#shared/units/showing.ts";
import { typedText } from "#shared/units/shown.ts";
import { LEAK, PULL } from "./examples.ts";

const stored = <T>(id: string, data: T, createdAt = "2026-03-20T10:00:00Z") => ({
  id,
  revision: 1,
  createdAt,
  updatedAt: createdAt,
  data,
});

const part = (id: string, more = {}) => stored(id, { name: id, ...more });

const book = (tests: readonly ReturnType<typeof stored<BenchTest>>[] = []): Book =>
  ({
    rotors: [
      part("b8", { sizes: [{ diameter: 0.038 }, { diameter: 0.042 }] }),
      part("c5", { sizes: [{ diameter: 0.05 }] }),
    ],
    motors: [part("m1"), part("m2")],
    packs: [part("p1"), part("p2")],
    skirts: [part("s1"), part("s2")],
    surfaces: [part("glass")],
    instruments: [],
    plates: [],
    gears: [part("foam"), part("rubber")],
    tests,
    builds: [
      stored("pane", { rotor: "c5", motor: "m2", pack: "p2", skirt: "s2", surface: "glass", diameter: 0.05 }),
    ],
  }) as unknown as Book;

const TODAY = "2026-04-01";

describe("firstDraft, a new test's set-up", () => {
  it("is that of the last test of its kind, its units too, but not its title, air, note or readings", () => {
    const earlier = { ...PULL, date: "2026-01-01", diameter: { value: 38, unit: "mm" } } as BenchTest;
    const changedBook = book([
      stored("late", { ...PULL, note: "windy" } as BenchTest),
      stored("early", earlier),
    ]);
    const draft = firstDraft(changedBook, { kind: "pull", today: TODAY });
    expect(draft.fields).toMatchObject({
      rotor: "b8",
      diameter: "42 mm",
      rigMass: "12.5 g",
      direction: "straight-off",
      "instruments.load.absolute": "1 g",
      date: TODAY,
      title: "",
      note: "",
    });
    expect(draft.units).toMatchObject({ letGo: "g", voltage: "V" });
    expect(draft.rows.map((row) => row.cells)).toEqual([{}]);
  });

  it("leaves the last test's unit where one was chosen for the book", () => {
    showUnitsOf(() => ({ load: "oz" }));
    const { units } = firstDraft(book([stored("late", PULL as BenchTest)]), { kind: "pull", today: TODAY });
    showUnitsOf(() => ({}));
    expect(units).toMatchObject({ voltage: "V" });
    expect(units).not.toHaveProperty("letGo");
  });

  it("is that of the build where no test of the kind was logged", () => {
    const draft = firstDraft(book(), { kind: "pull", today: TODAY });
    expect(draft.fields).toMatchObject({
      rotor: "c5",
      diameter: "50 mm",
      skirt: "s2",
      duty: "100 %",
      rigMass: "",
    });
  });

  it("takes over the bleed plate, and the part that the address names", () => {
    const draft = firstDraft(book([stored("leak", LEAK)]), {
      kind: "leak",
      today: TODAY,
      parts: { skirt: "s2" },
    });
    expect(draft.holes).toMatchObject([{ diameter: "5 mm", count: "6" }]);
    expect(draft.fields.skirt).toBe("s2");
  });

  it("leaves a part open that is no longer in the book", () => {
    const changedBook = { ...book([stored("pull", PULL)]), motors: [] };
    expect(firstDraft(changedBook, { kind: "pull", today: TODAY }).fields.motor).toBe("");
  });
});

describe("lastOf, sizesOf, millimetres and dayOf", () => {
  it("the last test is the newest by its day, then by when it was logged", () => {
    const changedBook = book([
      stored("first", PULL, "2026-03-20T10:00:00Z"),
      stored("second", PULL, "2026-03-20T11:00:00Z"),
      stored("older", { ...PULL, date: "2025-12-31" } as BenchTest, "2026-03-21T10:00:00Z"),
    ]);
    expect(lastOf(changedBook, "pull")?.id).toBe("second");
    expect(lastOf(changedBook, "motor")).toBeNull();
  });

  it("sizes are those of the rotor, in millimetres without rounding noise", () => {
    expect(sizesOf(book(), "b8")).toEqual(["38 mm", "42 mm"]);
    expect(sizesOf(book(), "none")).toEqual([]);
    expect(typedText(0.0423, "length", 6)).toBe("42.3 mm");
  });

  it("the day is that of the maker's own calendar", () => {
    expect(dayOf(new Date(2026, 0, 5, 23, 59))).toBe("2026-01-05");
  });
});
