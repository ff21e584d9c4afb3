import { describe, expect, it } from "vitest";
import { timeAlone } from "#shared/decide/choose/alone.ts";
import { FLAG } from "#shared/decide/choose/columns.ts";
import { runOf } from "#shared/decide/choose/input.ts";
import { placesOf } from "#shared/decide/choose/places.ts";
import { prepare } from "#shared/decide/choose/prepare.ts";
import type { Problem } from "#shared/decide/choose/problem.ts";
import { solveChunk } from "#shared/decide/choose/solveChunk.ts";
import { runDown } from "#shared/physics/rundown.ts";
import { CURVE, mixedQuestion, motor, pack, question, rotor } from "./questions.ts";

/** What docs/method/choosing.md states. */
const AGREED = 1e-3;

const cell = { capacity: 400, minimumVoltage: 3, resistance: 0.026, curve: CURVE };

function times(problem: Problem, every: number) {
  const prepared = prepare(problem);
  const indices = Array.from({ length: Math.floor(prepared.count / every) }, (_, i) => i * every);
  return indices
    .map((index) => {
      const time = timeAlone(prepared, index);
      if (Number.isNaN(time)) return null;
      const { end } = runDown({ ...runOf(problem, placesOf(prepared.radix, index)), angles: [] });
      return { time, end };
    })
    .filter((pair) => pair !== null);
}

describe("how long a combination runs, against its run-down second by second", () => {
  it("agrees within 0.1 % for cold and warm windings, lips, openings, measured leaks, several throttles", () => {
    const base = mixedQuestion(21);
    const packs = [3, 3, 2.2].map((minimumVoltage, i) =>
      pack(`${i}`, i + 1, { cell: { ...cell, minimumVoltage } }),
    );
    const pairs = times({ ...base, packs, rotors: base.rotors.slice(0, 10) }, 997);
    expect(pairs.length).toBeGreaterThan(25);
    for (const { time, end } of pairs) {
      if (end.time === 0) expect(time).toBe(0);
      else expect(time).toBeCloseToRelative(end.time, AGREED);
    }
    expect(new Set(pairs.map(({ end }) => end.reason))).toEqual(new Set(["minimum-voltage", "empty"]));
  });

  it("agrees for a cell with a flat middle, and for one that is nearly used up", () => {
    const flat = [
      [0, 2.4],
      [0.08, 3.1],
      [0.2, 3.25],
      [0.9, 3.3],
      [1, 3.5],
    ] as const;
    const packs = [pack("flat", 3, { cell: { ...cell, minimumVoltage: 2.5, curve: flat } })];
    for (const charge of [1, 0.3]) {
      const asked = question({ packs, fixed: { ...question().fixed, charge } });
      for (const { time, end } of times(asked, 29)) expect(time).toBeCloseToRelative(end.time, AGREED);
    }
  });
});

describe("how long a combination of cells runs whose resistance rises towards empty", () => {
  const rising = [
    [0.03, 0.07],
    [0.15, 0.04],
    [0.5, 0.028],
    [0.9, 0.024],
  ] as const;

  it("agrees within 0.1 % with its run-down second by second", () => {
    const base = mixedQuestion(21);
    const packs = [3, 3.3, 2.2].map((minimumVoltage, i) =>
      pack(`${i}`, i + 1, {
        cell: { ...cell, capacity: 150 * (i + 1), minimumVoltage, resistanceCurve: rising },
        parallel: i + 1,
      }),
    );
    for (const charge of [1, 0.4]) {
      const asked = { ...base, packs, rotors: base.rotors.slice(0, 10), fixed: { ...base.fixed, charge } };
      const pairs = times(asked, 7919);
      expect(pairs.length).toBeGreaterThan(2);
      for (const { time, end } of pairs) {
        if (end.time === 0) expect(time).toBe(0);
        else expect(time).toBeCloseToRelative(end.time, AGREED);
      }
    }
  });

  it("on a level voltage has the current of each charge", () => {
    const flat = [
      [0, 3.7],
      [1, 3.7],
    ] as const;
    const packs = [
      pack("level", 2, { cell: { ...cell, minimumVoltage: 2, curve: flat, resistanceCurve: rising } }),
    ];
    for (const { time, end } of times(question({ packs }), 23))
      expect(time).toBeCloseToRelative(end.time, AGREED);
  });

  it("that does not vary after all is timed as one resistance, to the last digit", () => {
    const asked = (resistanceCurve: readonly (readonly [number, number])[] | null) =>
      prepare(question({ packs: [pack("same", 2, { cell: { ...cell, resistanceCurve } })] }));
    const [one, same] = [
      asked(null),
      asked([
        [0.2, cell.resistance],
        [0.8, cell.resistance],
      ]),
    ];
    for (let index = 0; index < one.count; index += 13)
      expect(timeAlone(same, index)).toBe(timeAlone(one, index));
  });
});

describe("how long a combination runs, in closed form", () => {
  const level = (voltage: number) =>
    [
      [0, voltage],
      [1, voltage],
    ] as const;

  it("on a cell of one voltage is N_p·C·z/I", () => {
    const packs = [pack("level", 2, { parallel: 3, cell: { ...cell, curve: level(3.7) } })];
    const prepared = prepare(question({ packs, fixed: { ...question().fixed, charge: 0.6 } }));
    const chunk = solveChunk(prepared, 0, prepared.count);
    for (let index = 0; index < prepared.count; index += 17)
      expect(timeAlone(prepared, index)).toBeCloseToRelative(
        (3 * 400 * 0.6) / chunk.packCurrent[index],
        1e-12,
      );
  });

  it("is 0 where the loaded cell is at its minimum from the start", () => {
    const packs = [pack("low", 2, { cell: { ...cell, minimumVoltage: 3.7, curve: level(3.7) } })];
    const prepared = prepare(question({ packs }));
    expect(timeAlone(prepared, 0)).toBe(0);
  });

  it("is not known where the motor does not turn", () => {
    expect(timeAlone(prepare(question({ motors: [motor("still", { frictionTorque: 1 })] })), 0)).toBeNaN();
  });
});

describe("a run that the quadrature is not made for", () => {
  it("is followed step by step where the motor stops on the way, and says so", () => {
    const falling = [
      [0, 0.4],
      [1, 4],
    ] as const;
    const packs = [
      pack("falling", 1, { cell: { ...cell, minimumVoltage: 0.1, resistance: 0.01, curve: falling } }),
    ];
    const motors = [motor("stiff", { frictionTorque: 1.1e-2, resistance: 0.3, maxCurrent: null })];
    const wants = { ...question().wants, attitudes: [], leastRotorFactor: null, ratings: false };
    const asked = question({ motors, packs, rotors: [rotor("r")], duties: [1], wants });
    const prepared = prepare(asked);
    const chunk = solveChunk(prepared, 0, prepared.count);
    expect(chunk.flags[0] & FLAG.steppedRun).toBe(FLAG.steppedRun);
    const { end } = runDown({ ...runOf(asked, placesOf(prepared.radix, 0)), angles: [] });
    expect(chunk.time[0]).toBe(end.time);
  });
});
