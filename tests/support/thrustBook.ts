import type { Book } from "#shared/book/book.ts";
import type { CollectionName } from "#shared/model/collections.ts";
import { COLLECTIONS } from "#shared/model/schemas.ts";

const AT = "2026-01-01T00:00:00.000Z";
const stored = (name: CollectionName, id: string, data: object) => ({
  id,
  revision: 1,
  createdAt: AT,
  updatedAt: AT,
  data: COLLECTIONS[name].parse(data),
});

export const typed = (value: number, unit: string) => ({ value, unit });

/** An invented motor as its maker states it: 2300 rpm/V, 0.1 Ω, 0.5 A without load. */
export const MOTOR = { name: "Stand motor", kv: 2300, resistance: 0.1, noLoadCurrent: 0.5 };

/** Rows of a thrust test: speed [rpm], thrust [g], current of the motor [A] where it was read. */
export type ThrustRowTexts = readonly {
  readonly rpm: number;
  readonly grams: number;
  readonly amps?: number;
  readonly torque?: number;
  readonly setAside?: string;
}[];

/** A thrust test as the API takes it. */
export function thrustTest(rows: ThrustRowTexts, change: object = {}) {
  return {
    kind: "thrust",
    date: "2026-05-20",
    rotor: "prop",
    diameter: typed(127, "mm"),
    motor: "stand-motor",
    rows: rows.map(({ rpm, grams, amps, torque, setAside }) => ({
      speed: typed(rpm, "rpm"),
      thrust: typed(grams, "g"),
      ...(amps === undefined ? {} : { current: typed(amps, "A") }),
      ...(torque === undefined ? {} : { torque: typed(torque, "N·m") }),
      ...(setAside === undefined ? {} : { setAside }),
    })),
    ...change,
  };
}

interface Given {
  readonly rotor?: object;
  readonly build?: object;
  readonly tests?: readonly object[];
}

/** A bench with a propeller, one build that it presses on, and the tests given. */
export function thrustBook({ rotor = {}, build = {}, tests = [] }: Given): Book {
  const cell = {
    capacity: 3000,
    minimumVoltage: 3.2,
    resistance: 0.01,
    curve: [
      [0, 3.3],
      [0.5, 3.8],
      [1, 4.2],
    ],
  };
  const vehicle = { mass: 0.2 };
  const parts = { rotor: "prop", motor: "stand-motor", pack: "pack", surface: "pane" };
  return {
    rotors: [
      stored("rotors", "prop", { name: "Prop", kind: "propeller", sizes: [{ diameter: 0.127 }], ...rotor }),
    ],
    motors: [stored("motors", "stand-motor", MOTOR)],
    packs: [stored("packs", "pack", { name: "Two cells", series: 2, cell })],
    skirts: [
      stored("skirts", "lip", {
        name: "Lip",
        perimeter: 0.3,
        area: 0.005,
        land: 0.003,
        gap: 0.0006,
        share: 0.2,
      }),
    ],
    surfaces: [stored("surfaces", "pane", { name: "Pane", wheelFriction: 0.8 })],
    tests: tests.map((test, i) => stored("tests", `test-${i}`, test)),
    builds: [
      stored("builds", "scout", { name: "Scout", ...parts, diameter: 0.127, skirt: null, vehicle, ...build }),
    ],
  } as unknown as Book;
}
