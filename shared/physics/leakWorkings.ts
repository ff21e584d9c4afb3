import type { LeakAir } from "./restriction/law.ts";
import { type Leak, leakFlow } from "./restriction/leak.ts";
import { lawOf, type Restriction } from "./restriction/restriction.ts";
import { type Description, explain, type Working } from "./working.ts";

const SUCTION = ["Δp", "suction in the cavity", "Pa"] as const;
/** How the air's numbers are called beside those of a restriction. */
const OF_AIR: Readonly<Record<keyof LeakAir, Description>> = {
  density: ["ρ", "density of the air", "kg/m³"],
  viscosity: ["μ", "viscosity of the air", "Pa·s"],
  pressure: ["p₁", "pressure of the air", "Pa"],
};

/** Every number of a restriction that its words name and that it has. */
function ownNumbers(restriction: Restriction): [string, Description, number][] {
  const { numbers } = lawOf(restriction).words;
  return Object.entries<Description>(numbers).flatMap(([name, description]) => {
    const value = (restriction as unknown as Readonly<Record<string, unknown>>)[name];
    return typeof value === "number" ? [[name, description, value] as [string, Description, number]] : [];
  });
}

const velocityRow = (velocity: number): [string, Description, number] => [
  "velocity",
  ["v", "velocity of the air in it", "m/s"],
  velocity,
];

function restrictionWorking(
  restriction: Restriction,
  air: LeakAir,
  pressure: number,
  place: string,
): Working {
  const { flow, words, air: needed } = lawOf(restriction);
  const rows: [string, Description, number][] = [
    ["suction", SUCTION, pressure],
    ...needed.map((name): [string, Description, number] => [
      `air.${name}`,
      OF_AIR[name],
      air[name] ?? Number.NaN,
    ]),
    ...ownNumbers(restriction),
    ...(words.velocity ? [velocityRow(words.velocity(restriction, air, pressure))] : []),
  ];
  return explain<string>(
    {
      title: `flow through the ${words.name}${place}`,
      equation: words.equation,
      inputs: Object.fromEntries(rows.map(([name, description]) => [name, description])),
      output: ["Q", "m³/s"],
      source: words.source,
      evaluate: ({ suction }) => flow(restriction, air, suction),
    },
    Object.fromEntries(rows.map(([name, , value]) => [name, value])),
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
  const sum = explain<string>(
    {
      title: "flow through everything that leaks",
      equation:
        each.length === 0
          ? "Q = 0: nothing leaks"
          : `Q = ${each.map((_, i) => `Q${subscript(i + 1)}`).join(" + ")}`,
      inputs: Object.fromEntries(
        each.map(({ title }, i) => [i, [`Q${subscript(i + 1)}`, title, "m³/s"] as const]),
      ),
      output: ["Q", "m³/s"],
      source: "conservation of mass: paths side by side",
      evaluate: () => leakFlow(leak, air, pressure),
    },
    Object.fromEntries(each.map(({ result }, i) => [i, result.value])),
  );
  return [...each, sum];
}

/** " 2" of several of a kind; nothing where it is the only one. */
function placeAmong(leak: Leak, restriction: Restriction): string {
  const alike = leak.filter(({ kind }) => kind === restriction.kind);
  return alike.length > 1 ? ` ${alike.indexOf(restriction) + 1}` : "";
}

const ZERO_BELOW = "₀".charCodeAt(0);

const subscript = (n: number): string =>
  [...String(n)].map((digit) => String.fromCharCode(ZERO_BELOW + Number(digit))).join("");
