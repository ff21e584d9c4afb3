import { describe, expect, it } from "vitest";
import { FACTS } from "#client/views/choose/parts/FactList.tsx";
import { factBoard, factTitle } from "#client/views/choose/parts/factWorkings.ts";
import { motorFitBoard } from "#client/views/curves/fitWorkings.ts";
import { motorPage } from "#client/views/curves/motor/motorData.ts";
import { packPage } from "#client/views/curves/pack/packData.ts";
import { packFitBoard } from "#client/views/curves/pack/packWorkings.ts";
import { plateBoard } from "#client/views/curves/plateFigure.tsx";
import { pullPage } from "#client/views/curves/pull/pullData.ts";
import { pullBoard } from "#client/views/curves/pull/pullWorkings.ts";
import { rotorFamily } from "#client/views/curves/rotor/family.ts";
import { readingBoard } from "#client/views/curves/rotor/readingWorkings.ts";
import type { Book } from "#shared/book/book.ts";
import { testsOf } from "#shared/book/book.ts";
import { chooseProblem } from "#shared/book/choose/problem.ts";
import { curveReadings } from "#shared/book/readings/curve.ts";
import { detailOf } from "#shared/decide/choose/detail.ts";
import { prepare } from "#shared/decide/choose/prepare.ts";
import { solveChunk } from "#shared/decide/choose/solveChunk.ts";
import { type Board, originBehind, workingBehind } from "#shared/physics/working.ts";
import { chooseBody } from "#tests/support/chooseQuestion.ts";
import { demoBook } from "#tests/support/demoBook.ts";
import { expectWhole } from "./expectWhole.ts";

const demo = demoBook();
const priced = <T extends { readonly data: object }>(record: T, i: number): T => ({
  ...record,
  data: { ...record.data, price: 3 + i },
});
/** The demo, which states no prices, with one for each part. */
const book: Book = {
  ...demo,
  motors: demo.motors.map(priced),
  packs: demo.packs.map(priced),
  skirts: demo.skirts.map(priced),
  rotors: demo.rotors.map((record) => ({
    ...record,
    data: { ...record.data, sizes: record.data.sizes.map((size, i) => ({ ...size, price: 1.5 + i })) },
  })),
};
const titled = ({ workings }: Board, title: string) => workings.find((each) => each.title === title);

describe("workings of a reading through a bleed plate", () => {
  const metered = testsOf(book, "curve").filter(({ data }) => data.flowFrom === "bleed-plate");

  it("of every row of every curve test: the flow that the fit takes, by the numbers that stand in it, down to the row", () => {
    let rows = 0;
    for (const { id, data } of metered)
      for (const { flow, row } of curveReadings(data, null)) {
        const test = book.tests.find((each) => each.id === id);
        const board = test && plateBoard(book, test, row);
        expect(board === null || board === undefined).toBe(!(flow > 0));
        if (!board) continue;
        rows += 1;
        expectWhole(board);
        const working = titled(board, "flow through the plate");
        expect(working?.result.value).toBe(flow);
        const of = (symbol: string) =>
          working?.values.filter((each) => each.symbol.startsWith(symbol)).map(({ value }) => value) ?? [];
        const [count, bore, coefficient] = [of("N"), of("d"), of("C_d")];
        const area = count.reduce((sum, n, i) => sum + n * coefficient[i] * (Math.PI / 4) * bore[i] ** 2, 0);
        const byHand = area * of("ε")[0] * Math.sqrt((2 * of("Δp")[0]) / of("ρ")[0]);
        expect(byHand).toBeCloseToRelative(flow, 1e-9);
        for (const value of working?.values ?? []) {
          if (value.symbol === "ε") continue;
          const behind = workingBehind(value, board.workings) ?? originBehind(value, board.origins);
          expect(behind, value.symbol).not.toBeNull();
        }
      }
    expect(rows).toBeGreaterThan(10);
  });

  it("of a rotor's reading: φ, ψ and how far it is off, φ from the plate's flow", () => {
    const family = rotorFamily(book, "swept-nine");
    const readings = family?.readings.filter(({ flow, residual }) => flow > 0 && residual !== null) ?? [];
    expect(readings.length).toBeGreaterThan(5);
    for (const reading of readings) {
      const board = family ? readingBoard(book, family, reading) : expect.fail("no rotor");
      expectWhole(board);
      const value = (title: string) => titled(board, title)?.result.value ?? Number.NaN;
      expect(value("flow coefficient of the reading")).toBeCloseToRelative(reading.phi, 1e-12);
      expect(value("pressure coefficient of the reading")).toBeCloseToRelative(reading.psi, 1e-12);
      expect(value("how far the reading is off the curve")).toBe(reading.residual);
      const flow = titled(board, "flow coefficient of the reading")?.values.find(
        ({ symbol }) => symbol === "Q",
      );
      expect(flow && workingBehind(flow, board.workings)?.title).toBe("flow through the plate");
    }
  });
});

describe("workings of a pack", () => {
  it("of every pack that was discharged: resistance, by charge as well, capacity and both ends of its curve", () => {
    const pages = book.packs.flatMap(({ id }) => packPage(book, id) ?? []);
    let fitted = 0;
    for (const page of pages) {
      const fit = page.basis.basis === "missing" ? null : page.basis.fit;
      if (!fit) continue;
      fitted += 1;
      const board = packFitBoard(page);
      expectWhole(board);
      const told = fit.resistanceFrom === "known" ? undefined : fit.resistance;
      expect(titled(board, "resistance of a cell")?.result.value).toBe(told);
      expect(titled(board, "voltage of a full cell at rest")?.result.value).toBe(fit.curve.at(-1)?.[1]);
      const emptied = fit.capacityFrom === "emptied" ? fit.capacity : undefined;
      expect(titled(board, "capacity of a cell")?.result.value).toBe(emptied);
      const stretches = board.workings.filter(({ title }) => title.endsWith("% charge"));
      expect(stretches.map(({ result }) => result.value)).toEqual(
        (fit.resistanceByCharge ?? []).map(({ resistance }) => resistance),
      );
      expect(board.origins[0].tests.length).toBeGreaterThan(0);
    }
    expect(fitted).toBeGreaterThan(0);
  });
});

describe("workings of pulls and of what turns a motor", () => {
  it("of the pulls of every skirt: the median over the prediction, down to the pull tests", () => {
    const pages = book.skirts.map(({ id }) => pullPage(book, "skirt", id)).filter(({ ratio }) => ratio);
    expect(pages.length).toBeGreaterThan(0);
    for (const page of pages) {
      const board = pullBoard(page);
      expectWhole(board);
      expect(board.workings[0].result.value).toBe(page.ratio?.median);
      const kinds = board.origins[0].tests.map((test) => book.tests.find(({ id }) => id === test)?.data.kind);
      expect(new Set(kinds)).toEqual(new Set(["pull"]));
    }
  });

  it("of every motor that was tested: friction and the throttle from which it turns", () => {
    let frictions = 0;
    for (const { id } of book.motors) {
      const page = motorPage(book, id);
      if (!page?.basis.fit) continue;
      const board = motorFitBoard(page);
      expectWhole(board);
      const { constants, throttle } = page.basis;
      if (constants.frictionTorque > 0) frictions += 1;
      expect(titled(board, "friction of the motor")?.result.value ?? 0).toBe(constants.frictionTorque);
      if (!throttle || !(throttle.offset > 0)) continue;
      expect(titled(board, "throttle from which it turns")?.result.value).toBe(throttle.offset);
    }
    expect(frictions).toBeGreaterThan(0);
  });
});

describe("workings of Choose", () => {
  const request = chooseBody({
    rotors: [
      { rotor: "swept-nine" },
      { rotor: "pusher-three", diameters: { from: 0.09, to: 0.13, step: 0.02 } },
    ],
    wants: { leastKeptTime: 0 },
  });
  const { problem, base } = chooseProblem(book, request);
  const prepared = prepare(problem);
  const results = [solveChunk(prepared, 0, prepared.count)];
  const setAt = (index: number) => {
    const { broken, ...set } = detailOf(prepared, results, index);
    return { ...set, broken: [...broken], onFront: false };
  };

  it("of every fact of combinations of both kinds: the figure that is shown", () => {
    const known = new Map<string, number>();
    for (let index = 0; index < prepared.count; index += Math.ceil(prepared.count / 12)) {
      const set = setAt(index);
      if (!(set.values.speed ?? 0)) continue;
      const board = factBoard(book, base, set, request.wants);
      expectWhole(board);
      for (const column of FACTS) {
        const value = set.values[column];
        const title = factTitle(column, set.gap === null);
        if (value === null || !title || (set.gap === null && column === "rotorFactor")) continue;
        const working = titled(board, title);
        if (value === 0 && !working) continue;
        if (value === 0) expect(working?.result.value).toBe(0);
        else expect(working?.result.value, `${column} of ${index}`).toBeCloseToRelative(value, 1e-9);
        known.set(column, (known.get(column) ?? 0) + 1);
      }
    }
    for (const column of FACTS) expect(known.get(column) ?? 0, column).toBeGreaterThan(0);
  });

  it("heights and prices are the sums of the parts that stand in them; the burst speed leads down to the rotor's strength", () => {
    const index = Array.from({ length: prepared.count }, (_, i) => i).find(
      (i) => (detailOf(prepared, results, i).values.rotorFactor ?? 0) > 1,
    );
    const set = setAt(index ?? 0);
    const board = factBoard(book, base, set, request.wants);
    for (const column of ["height", "price"] as const) {
      const working = titled(board, factTitle(column, false) ?? "");
      const sum = working?.values.reduce((total, { value }) => total + value, 0);
      expect(sum).toBeCloseToRelative(set.values[column] ?? Number.NaN, 1e-12);
    }
    const burst = titled(board, "burst speed over its own")?.values.find(
      ({ symbol }) => symbol === "ω_burst",
    );
    expect(burst && workingBehind(burst, board.workings)?.title).toBe("speed at which it bursts");
  });
});
