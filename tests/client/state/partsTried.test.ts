import { describe, expect, it } from "vitest";
import { partTried, triedFromQuery, triedToQuery, withTried } from "#client/state/partsTried.ts";
import { partList } from "#client/views/match/parts/partLists.ts";
import { withMass } from "#shared/book/mass/withMass.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const book = demoBook();
const stored = book.builds.find(({ id }) => id === "pane-crawler")?.data;
if (!stored) throw new Error("The demo has no pane crawler.");
const other = book.motors.find(({ id }) => id !== stored.motor);
if (!other) throw new Error("The demo has one motor.");
const own = book.motors.find(({ id }) => id === stored.motor);
const smaller = { rotor: stored.rotor, diameter: 0.038 };

describe("a part tried in the place of the build's own", () => {
  it("brings its own mass: the whole is heavier by the difference of the two", () => {
    const tried = withTried(book, stored, partTried(stored, {}, "motor", { motor: other.id }));
    const more = (other.data.mass ?? Number.NaN) - (own?.data.mass ?? Number.NaN);
    expect(tried.motor).toBe(other.id);
    expect(withMass(book, tried).vehicle.mass - withMass(book, stored).vehicle.mass).toBeCloseTo(more, 12);
  });

  it("given back, leaves nothing tried, and the other settings stay", () => {
    const tried = partTried(stored, { mass: 0.5 }, "motor", { motor: other.id });
    expect(partTried(stored, tried, "motor", { motor: stored.motor })).toEqual({ mass: 0.5 });
    const size = partTried(stored, {}, "rotor", smaller);
    expect(partTried(stored, size, "rotor", { rotor: stored.rotor, diameter: stored.diameter })).toEqual({});
  });

  it("takes away what was tried of the part before: a rotor's diameter, a pack's cells, a skirt's gap", () => {
    const moved = { diameter: 0.05, series: 3, gap: 1e-3, charge: 0.5 };
    const { diameter: _d, ...kept } = moved;
    expect(partTried(stored, moved, "rotor", smaller)).toEqual({ ...kept, parts: smaller });
    expect(partTried(stored, moved, "pack", { pack: "x" })).not.toHaveProperty("series");
    expect(partTried(stored, moved, "skirt", { skirt: "x" })).not.toHaveProperty("gap");
  });

  it("goes through an address and back; one that the book doesn't have is named and not tried", () => {
    const tried = { charge: 0.5, parts: { ...smaller, motor: other.id } };
    const query = new URLSearchParams(triedToQuery(tried));
    expect(triedFromQuery(query, book)).toEqual({ tried, unknown: [] });
    query.set("motor", "nobody-has-it");
    query.delete("size");
    expect(triedFromQuery(query, book)).toEqual({ tried: { charge: 0.5 }, unknown: ["rotor", "motor"] });
  });
});

describe("the parts listed beside Match's picture", () => {
  it("have their own mass behind them, the build's own among them; one that isn't weighed says so", () => {
    const plain = (text: string) => text.replaceAll("\u202f", " ");
    const labels = partList(book, stored, "motor").map(({ label }) => plain(label));
    expect(labels).toContain("Bell motor, 18 mm · 19 g");
    expect(labels).toHaveLength(book.motors.length);
    const unweighed = {
      ...book,
      motors: book.motors.map(({ data: { mass: _m, ...data }, ...rest }) => ({ ...rest, data })),
    };
    const [first] = partList(unweighed, stored, "motor");
    expect(first).toMatchObject({ weighed: false, label: expect.stringMatching(/ · mass not known$/) });
  });
});
