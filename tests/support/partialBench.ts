import type { Bench } from "../../shared/book/bench.ts";
import { demoBench } from "./demoBench.ts";

type Tests = Bench["tests"];
const KINDS_OF_FRICTION = ["friction", "pull"];

/** @returns the bench with no word on the wheels' friction: none stated, no tilt board, no pull to calibrate by */
export function withoutFriction(bench: Bench): Bench {
  return {
    ...bench,
    tests: bench.tests.filter(({ data }) => !KINDS_OF_FRICTION.includes(data.kind)),
    surfaces: bench.surfaces.map((surface) => {
      const { wheelFriction: _stated, ...data } = surface.data;
      return { ...surface, data };
    }),
  };
}

/** @returns the bench with no motor named in its curve and thrust tests: λ and C_P stay unknown */
export function withoutPower(bench: Bench): Bench {
  const tests = bench.tests.map((test) =>
    test.data.kind === "curve" || test.data.kind === "thrust"
      ? { ...test, data: { ...test.data, motor: null } }
      : test,
  );
  return { ...bench, tests: tests as Tests };
}

/** @returns the bench with packs of no curve, no chemistry and no discharge test */
export function withoutCell(bench: Bench): Bench {
  return {
    ...bench,
    tests: bench.tests.filter(({ data }) => data.kind !== "discharge"),
    packs: bench.packs.map((pack) => {
      const { curve: _stated, chemistry: _published, ...cell } = pack.data.cell;
      return { ...pack, data: { ...pack.data, cell } };
    }),
  };
}

/** @returns the demo's bench book, changed */
export function demoWithout(...changes: readonly ((bench: Bench) => Bench)[]): Bench {
  return changes.reduce((bench, change) => change(bench), demoBench());
}
