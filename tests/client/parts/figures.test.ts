import { describe, expect, it } from "vitest";
import { figuresOf, type PartFigures } from "#client/views/parts/list/figures.ts";
import { partBoard } from "#client/views/parts/list/partBoard.ts";
import { usesOf } from "#client/views/parts/list/uses.ts";
import type { Book } from "#shared/book/book.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const book = demoBook();
const [motor] = book.motors;
const textsOf = ({ figures }: PartFigures) => figures.map(({ text }) => text.replaceAll("\u202f", " "));

/** A book with one motor and no test of it. */
const stated = (data: object): Book => ({
  ...book,
  tests: [],
  motors: [{ ...motor, id: "only", data: { ...motor.data, ...data } }],
});

describe("figuresOf, what the list of parts says", () => {
  // Textbook of the DC motor with constant friction: η_max = (1 − √(I₀/I_stall))².
  it("a motor's sketch has the textbook's best efficiency, to a step of the sketch", () => {
    const of = figuresOf(
      stated({ kv: 1000, resistance: 0.1, noLoadCurrent: 1, ratedVoltage: 10, viscousTorque: 0 }),
      "motors",
      "only",
    );
    const best = Math.max(...(of.sketch?.points ?? []).map(([, efficiency]) => efficiency));
    const textbook = (1 - Math.sqrt(1 / (10 / 0.1))) ** 2;
    expect(best).toBeLessThanOrEqual(textbook + 1e-12);
    expect(best).toBeGreaterThan(textbook - 0.01);
    expect(of.mark).toBe("stated");
    expect(textsOf(of)).toContain("1000 rpm/V");
  });

  it("a motor without a rated voltage, or without numbers at all, has no sketch and keeps what is known", () => {
    expect(figuresOf(stated({ ratedVoltage: undefined }), "motors", "only").sketch).toBeUndefined();
    const bare = figuresOf(stated({ kv: undefined, resistance: undefined, mass: 0.019 }), "motors", "only");
    expect(bare.sketch).toBeUndefined();
    expect(textsOf(bare)).toEqual(["19.0 g"]);
  });

  it("a tested rotor's sketch falls to zero at free flow; one without a curve says so", () => {
    const points = figuresOf(book, "rotors", book.rotors[0].id).sketch?.points ?? [];
    expect(points[0][1]).toBeGreaterThan(0);
    expect(points.at(-1)?.[1]).toBeCloseTo(0, 9);
    const bare: Book = {
      ...book,
      tests: [],
      rotors: [{ ...book.rotors[0], data: { name: "Bare" } as never }],
    };
    expect(figuresOf(bare, "rotors", book.rotors[0].id)).toEqual({ figures: [{ text: "no curve yet" }] });
  });

  it("every part and build of the demo has something to say, and what isn't there has nothing", () => {
    for (const collection of ["rotors", "motors", "packs", "skirts", "surfaces", "builds"] as const)
      for (const { id } of book[collection])
        expect(figuresOf(book, collection, id).figures.length, id).toBeGreaterThan(0);
    expect(figuresOf(book, "rotors", "gone")).toEqual({ figures: [] });
  });
});

describe("workings of what the list of parts says", () => {
  it("of every figure that tests say: the figure itself, to the last digit; of what is stated none", () => {
    const worked = (["motors", "packs", "surfaces"] as const).flatMap((collection) =>
      book[collection].flatMap(({ id }) =>
        figuresOf(book, collection, id).figures.flatMap(({ title, value }) => {
          if (title === undefined) return [];
          const { workings } = partBoard(book, collection, id);
          expect(workings.find((each) => each.title === title)?.result.value, `${id}: ${title}`).toBe(value);
          return [title];
        }),
      ),
    );
    expect(new Set(worked)).toEqual(
      new Set(["speed constant", "resistance", "capacity of the pack", "roughness allowance"]),
    );
    const bare = figuresOf(stated({ kv: 1000, resistance: 0.1 }), "motors", "only").figures;
    expect(bare.map(({ title }) => title)).toEqual(bare.map(() => undefined));
    expect(partBoard(book, "rotors", book.rotors[0].id).workings).toEqual([]);
  });
});

describe("usesOf, tests and builds that name a part", () => {
  it("are those whose records name it, the newest test first; an instrument has none", () => {
    const { rotor } = book.builds[0].data;
    const uses = usesOf(book, "rotors", rotor);
    const tests = book.tests.filter(({ data }) => "rotor" in data && data.rotor === rotor);
    expect(new Set(uses?.tests)).toEqual(new Set(tests));
    const days = uses?.tests.map(({ data }) => data.date) ?? [];
    expect(days).toEqual([...days].sort().reverse());
    expect(uses?.builds).toEqual(book.builds.filter(({ data }) => data.rotor === rotor));
    expect(days.length * (uses?.builds.length ?? 0)).toBeGreaterThan(1);
    expect(usesOf(book, "instruments", "tilt-board")).toBeNull();
  });
});
