import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { guessMapping } from "#client/views/bench/import/mapping.ts";
import { type Draft, withCell, withField } from "#client/views/bench/record/draft.ts";
import { readDraft } from "#client/views/bench/record/readDraft.ts";
import { writeDraft } from "#client/views/bench/record/writeDraft.ts";
import { type Running, withError } from "#client/views/bench/running/result.ts";
import { runningResult } from "#client/views/bench/running/run.ts";
import type { Book } from "#shared/book/book.ts";
import { byCollection } from "#shared/model/collections.ts";
import type { BenchTest } from "#shared/model/tests/index.ts";
import { readCsv, readPoints } from "#tests/support/importing.ts";
import {
  EXAMPLES,
  FRICTION,
  KNOWN_CURVE,
  LEAK,
  MOTOR,
  PLATE_CURVE,
  PULL,
  RIDE_HEIGHT,
  THRUST,
} from "./examples.ts";

const EMPTY = byCollection(() => []) as Book;

const run = (draft: Draft): Running => runningResult(readDraft(draft), EMPTY);
const said = (running: Running, label: string): string | undefined =>
  running.figures.find((figure) => figure.label === label)?.text.replaceAll("\u202f", " ");
const everything = (running: Running): string =>
  [
    ...running.figures.map(({ text }) => text),
    ...running.byRow.values(),
    ...running.notes,
    running.next,
  ].join("\n");

describe("runningResult, by hand calculation", () => {
  it("a pull straight off: the load less the rig's own weight", () => {
    const running = run(withField(writeDraft(PULL), "rigMass", "12 g"));
    // (410 − 12) g and (430 − 12) g times 9.80665 m/s²; the row set aside takes no part
    expect(said(running, "Pull on the surface")).toBe("3.90 N to 4.10 N (398 g to 418 g)");
  });

  it("several pulls: the tightest bracket they agree on, and a contradiction where they don't", () => {
    const rows = (...brackets: [number, number][]) =>
      brackets.map(([held, letGo]) => ({
        held: { value: held, unit: "N" },
        letGo: { value: letGo, unit: "N" },
      }));
    const pulls = (...brackets: [number, number][]) =>
      run(withField(writeDraft({ ...PULL, rows: rows(...brackets) } as BenchTest), "rigMass", "0 g"));
    expect(said(pulls([3, 5], [4, 6]), "Pull on the surface")).toMatch(/^4\.00 N to 5\.00 N/);
    expect(said(pulls([3, 4], [5, 6]), "Pull on the surface")).toMatch(/^scattered: one let go at 4\.00 N/);
  });

  it("a curve: φ and ψ of a row from its own speed, size and density", () => {
    const running = run(writeDraft(KNOWN_CURVE));
    // 600 rpm, D = 38 mm: u = π·0.038·10 = 1.19381 m/s; A = π/4·0.038² = 1.134115e-3 m²
    // φ = 5e-4/(A·u) = 0.36929; ψ = 2·60/(1.19·u²) = 70.756
    expect(running.byRow.get(0)?.replace(/\s/g, " ")).toBe("0.500 L/s φ 0.369 ψ 70.8");
  });

  it("a thrust: C_T and C_P of a row from its own speed and size, no C_P from a current at part throttle", () => {
    const running = run(writeDraft(THRUST));
    // 6000 rpm: n = 100/s, ρn²D⁴ = 1.2·1e4·0.127⁴ = 3.12174 N; T = 0.04·9.80665 = 0.392266 N → 0.1257
    // P = 3e-3·628.319 = 1.88496 W over ρn³D⁵ = 3.12174·100·0.127 = 39.6461 W → 0.0475
    expect(running.byRow.get(0)?.replace(/\s/g, " ")).toBe("C_T 0.126 C_P 0.0475");
    // 12 000 rpm: 1.6/(4·3.12174) = 0.1281
    expect(running.byRow.get(1)?.replace(/\s/g, " ")).toBe("C_T 0.128, no C_P: throttle below 100 %");
    expect(running.next).toMatch(/another speed/);
  });

  it("a thrust test without torque or motor: says what gives the power", () => {
    const rows = THRUST.rows.map(({ ...row }) => ({
      ...row,
      torque: undefined,
      throttle: { value: 100, unit: "%" },
    }));
    const running = run(writeDraft({ ...THRUST, motor: null, rows } as BenchTest));
    expect(running.next).toMatch(/Name the motor/);
    expect(said(running, "C_P")).toMatch(/not yet/);
  });

  it("slides: the tangents of the tilts", () => {
    const running = run(writeDraft(FRICTION));
    // tan 33° = 0.6494, tan 35° = 0.7002, tan 37° = 0.7536
    expect([...running.byRow.values()]).toEqual(["μ 0.649 to 0.700", "μ below 0.754"]);
  });

  it("heights: the line's slope, and the lip's height without load", () => {
    const running = run(writeDraft(RIDE_HEIGHT));
    // Least squares by hand through (−1 N, 0.7), (0, 0.6), (2.942 N, 0.4 mm): S_xx 8.398 N², slope −0.6237/8.398 =
    // −0.07426 mm/N, so k 13.47 N/mm and 0.6147 mm at 0; u(slope) = 0.02/√8.398 = 0.0069 mm/N, u(k) = k²·u = 1.25 N/mm.
    expect(said(running, "Stiffness")).toBe("13.5 ± 1.3 N/mm");
    expect(said(running, "Lip without load")).toMatch(/^0\.61 ± 0\.01 mm$/);
    expect([...running.byRow.values()]).toEqual(["", "", "", "touches"]);
  });

  it("heights at one load: none, and what to measure", () => {
    const rows = RIDE_HEIGHT.rows.slice(0, 1);
    const running = run(writeDraft({ ...RIDE_HEIGHT, rows } as BenchTest));
    expect(running.next).toMatch(/two loads or more/);
  });

  it("a motor with an ohmmeter reading: K_v from a run without load", () => {
    const running = run(writeDraft(MOTOR));
    expect(said(running, "K_v")).toMatch(/rpm\/V/);
    expect(running.next).toBeNull();
  });

  it("a leak: C and x of two points", () => {
    const running = run(writeDraft(LEAK));
    // the plate's flow grows as √210/√12 = 4.18 from 50 to 800 Pa: x = ln 4.18/ln 16 = 0.516 but for the plate's C_d
    expect(Number(said(running, "x")?.split(" ")[0])).toBeCloseTo(0.516, 1);
  });
});

describe("runningResult, measured data", () => {
  it("three speeds of one fan fall on one curve to 1 % of the blocked pressure", () => {
    // openCeFaDB (M. Probst), CC-BY-4.0; the bound is that of the data set's own collapse, rms 0.5 %, doubled
    const rows = ["600rpm.csv", "800-1000rpm.csv"].flatMap((name, file) => {
      const path = new URL(`../../fixtures/fan-three-speeds/${name}`, import.meta.url);
      const table = readCsv(readFileSync(path, "utf8"));
      const mapping = guessMapping(table.header);
      const { good } = readPoints({ table, mapping, commonSpeed: "", holeKinds: 0 });
      return good.map(({ row }) => ({ ...row, key: row.key + 1000 * file }));
    });
    const air = { "air.temperature": "23 °C", "air.pressure": "995 hPa", "air.humidity": "40 %" };
    const head = { diameter: "200 mm", flowFrom: "known-flow", date: "2026-03-14", rotor: "fan", ...air };
    const running = run({ kind: "curve", fields: head, holes: [], rows, units: {} });
    expect(Number(said(running, "Residuals, of ψ₀")?.split(" ")[0])).toBeLessThanOrEqual(1);
  });
});

describe("a value with its error", () => {
  it("of an error of a usual size: two digits of it; of one all too small: five digits of the value", () => {
    expect(withError(13.3333, 0.021)).toBe("13.333 ± 0.021");
    expect(withError(13.33333, 0.00088)).toBe("13.333 ± 0.0009");
    expect(withError(0, 0.02)).toBe("0.000 ± 0.020");
    expect(withError(13.3, null)).toBe("13.3");
  });
});

describe("runningResult, half typed", () => {
  it.each(EXAMPLES.map((test) => [test.kind, test] as const))(
    "a %s test never shows NaN, whatever is left out, and says what comes next",
    (_kind, test) => {
      const whole = writeDraft(test);
      for (const path of Object.keys(whole.fields)) {
        expect(everything(run(withField(whole, path, "")))).not.toMatch(/NaN|undefined|Infinity/);
      }
      for (const column of Object.keys(whole.rows[0].cells)) {
        for (const text of ["", "0", "-1", "abc"])
          expect(everything(run(withCell(whole, 0, column, text)))).not.toMatch(/NaN|undefined|Infinity/);
      }
      expect(run({ ...whole, rows: [] }).next).toMatch(/\S/);
      expect(everything(run({ ...whole, rows: [], holes: [], fields: {} }))).not.toMatch(/NaN|undefined/);
    },
  );

  it.each(EXAMPLES.map((test) => [test.kind, test] as const))(
    "a %s test in air that can't be, as while its pressure is typed: goes on",
    (_kind, test) => {
      const air = { "air.temperature": "18 °C", "air.humidity": "50 %" };
      for (const pressure of ["1", "-5", "0", "990 hPa"]) {
        const draft = writeDraft(test);
        const fields = { ...draft.fields, ...air, "air.pressure": pressure };
        expect(everything(run({ ...draft, fields }))).not.toMatch(/NaN|undefined|Infinity|air\./);
      }
    },
  );

  it("asks for the plate's holes where one can't be read", () => {
    const draft = writeDraft(PLATE_CURVE);
    expect(run({ ...draft, holes: [{ ...draft.holes[0], diameter: "" }] }).next).toMatch(/bleed plate/);
  });

  it("one point of a curve asks for another", () => {
    const draft = writeDraft(KNOWN_CURVE);
    const running = run({ ...draft, rows: draft.rows.slice(0, 1) });
    expect(running.figures).toEqual([]);
    expect(running.next).toMatch(/\S/);
  });

  it("says why no pull is predicted where the parts are not in the book", () => {
    expect(run(writeDraft(PULL)).notes.join()).toMatch(
      /No predicted pull: The build's rotor is not in the book/,
    );
  });
});
