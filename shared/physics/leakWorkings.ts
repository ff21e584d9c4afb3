import type { LeakAir } from "./restriction/law.ts";
import { type Leak, leakFlow } from "./restriction/leak.ts";
import { lawOf, type Restriction } from "./restriction/restriction.ts";
import { type Description, type Row, subscript, type Working, workedOut } from "./working.ts";

const SUCTION = ["Δp", "suction in the cavity", "Pa", "pressure"] as const;
/** How the air's numbers are called beside those of a restriction. */
const OF_AIR: Readonly<Record<keyof LeakAir, Description>> = {
  density: ["ρ", "density of the air", "kg/m³"],
  viscosity: ["μ", "viscosity of the air", "Pa·s"],
  pressure: ["p₁", "pressure of the air", "Pa", "airPressure"],
};

/** Every number of a restriction that its words name and that it has. */
function ownNumbers(restriction: Restriction): Row[] {
  const { numbers } = lawOf(restriction).words;
  return Object.entries<Description>(numbers).flatMap(([name, description]) => {
    const value = (restriction as unknown as Readonly<Record<string, unknown>>)[name];
    return typeof value === "number" ? [[description, value] as const] : [];
  });
}

const VELOCITY = ["v", "velocity of the air in it", "m/s"] as const;

function restrictionWorking(
  restriction: Restriction,
  air: LeakAir,
  pressure: number,
  place: string,
): Working {
  const { flow, words, air: needed } = lawOf(restriction);
  const rows: Row[] = [
    [SUCTION, pressure],
    ...needed.map((name): Row => [OF_AIR[name], air[name] ?? Number.NaN]),
    ...ownNumbers(restriction),
    ...(words.velocity ? [[VELOCITY, words.velocity(restriction, air, pressure)] as const] : []),
  ];
  return workedOut(
    {
      title: `flow through the ${words.name}${place}`,
      equation: words.equation,
      output: ["Q", "m³/s"],
      source: words.source,
    },
    rows,
    flow(restriction, air, pressure),
  );
}

/**
 * Working of the flow through everything that leaks.
 *
 *     each restriction by its own law, then Q = Σ Qᵢ
 *
 * @param leak - the restrictions, SI
 * @param air - density [kg/m³], viscosity [Pa·s], ambient pressure [Pa]
 * @param pressure - Δp of the cavity [Pa]
 * @returns a working for each that passes air, and last that of their sum where they are not one alone [SI]
 * @throws {OutOfRangeError} as {@link leakFlow}
 *
 * Valid and source: as {@link leakFlow}
 */
export function leakWorkings(leak: Leak, air: LeakAir, pressure: number): Working[] {
  const open = leak.filter((restriction) => lawOf(restriction).isOpen(restriction));
  const each = open.map((restriction) =>
    restrictionWorking(restriction, air, pressure, placeAmong(open, restriction)),
  );
  if (each.length === 1) return each;
  const sum = workedOut(
    {
      title: "flow through everything that leaks",
      equation:
        each.length === 0
          ? "Q = 0: nothing leaks"
          : `Q = ${each.map((_, i) => `Q${subscript(i + 1)}`).join(" + ")}`,
      output: ["Q", "m³/s"],
      source: "conservation of mass: paths side by side",
    },
    each.map(({ title, result }, i): Row => [[`Q${subscript(i + 1)}`, title, "m³/s"], result.value]),
    leakFlow(leak, air, pressure),
  );
  return [...each, sum];
}

/** " 2" of several of a kind; nothing where it is the only one. */
function placeAmong(leak: Leak, restriction: Restriction): string {
  const alike = leak.filter(({ kind }) => kind === restriction.kind);
  return alike.length > 1 ? ` ${alike.indexOf(restriction) + 1}` : "";
}
