import type { Bench } from "../../shared/book/resolve.ts";
import type { TestKind } from "../../shared/model/tests/index.ts";
import { formatQuantity } from "../../shared/units/format.ts";
import { href } from "../app/router.ts";
import type { Outcome } from "../state/outcome.ts";
import { counted } from "./count.ts";
import { Mark } from "./Mark.tsx";

const KIND_WORDS: Readonly<Record<TestKind, string>> = {
  curve: "curve test",
  pull: "pull test",
  motor: "motor test",
  leak: "leak test",
  friction: "friction test",
  thrust: "thrust test",
};

function countsByKind(bench: Bench, ids: readonly string[]): string[] {
  const used = new Set(ids);
  const counts = new Map<TestKind, number>();
  for (const test of bench.tests)
    if (used.has(test.id)) counts.set(test.data.kind, (counts.get(test.data.kind) ?? 0) + 1);
  return [...counts].map(([kind, n]) => counted(n, KIND_WORDS[kind]));
}

interface Part {
  readonly name: string;
  readonly data: { readonly name: string; readonly estimated: readonly string[] };
}

/** Fields of the parts in use that are guesses or makers' figures. */
function estimatedParts(bench: Bench, { build }: Outcome): Part[] {
  const parts = [
    { name: "rotor", data: bench.rotors.find((each) => each.id === build.rotor)?.data },
    { name: "motor", data: bench.motors.find((each) => each.id === build.motor)?.data },
    { name: "pack", data: bench.packs.find((each) => each.id === build.pack)?.data },
    { name: "skirt", data: bench.skirts.find((each) => each.id === build.skirt)?.data },
    { name: "surface", data: bench.surfaces.find((each) => each.id === build.surface)?.data },
  ];
  return parts.flatMap(({ name, data }) => (data && data.estimated.length > 0 ? [{ name, data }] : []));
}

/** "cell.resistance" and "noLoadCurrent" as a reader says them. */
function fieldWords(path: string): string {
  return path
    .replace(/\./g, " ")
    .replace(/([a-z])([A-Z])/g, "$1 $2")
    .toLowerCase();
}

/** On how many tests the figures rest, and what is scaled, stated or estimated in them. */
export function RestsOn({ bench, outcome }: { bench: Bench; outcome: Outcome }) {
  const { resolved, build, prediction } = outcome;
  if (!resolved) return null;
  const counts = countsByKind(bench, resolved.tests);
  const motor = bench.motors.find((each) => each.id === build.motor);
  return (
    <>
      <h2>Rests on</h2>
      <p>
        {counts.length > 0 ? (
          <a href={href("bench")}>{counts.join(", ")}</a>
        ) : (
          "No test yet: every figure is stated or estimated."
        )}
      </p>
      <ul class="rests">
        {resolved.rotor?.basis === "estimated" && (
          <li>
            <Mark word="estimated" /> rotor curve, from its geometry, ± 30 %
          </li>
        )}
        {resolved.rotor?.basis === "two-point" && (
          <li>
            <Mark word="two-point" /> rotor curve, from blocked and open readings alone
          </li>
        )}
        {resolved.scaledFrom !== null && (
          <li>
            <Mark word="scaled" /> rotor of {formatQuantity(build.diameter, "length")}, from{" "}
            {formatQuantity(resolved.scaledFrom, "length")}
          </li>
        )}
        {prediction?.point?.extrapolated && (
          <li>
            <Mark word="extrapolated" /> operating point, beyond the tested flows
          </li>
        )}
        {resolved.motor?.basis === "stated" && (
          <li>
            <Mark word="stated" /> motor {motor?.data.name}, by its maker
          </li>
        )}
        {resolved.friction?.basis === "stated" && (
          <li>
            <Mark word="stated" /> friction of the wheels
          </li>
        )}
        {resolved.skirtFriction?.basis === "stated" && (resolved.input?.vehicle.skirtShare ?? 0) > 0 && (
          <li>
            <Mark word="stated" /> friction of the skirt
          </li>
        )}
        {estimatedParts(bench, outcome).map((part) => (
          <li key={part.name}>
            <Mark word="estimated" /> {part.data.name}: {part.data.estimated.map(fieldWords).join(", ")}
          </li>
        ))}
      </ul>
    </>
  );
}
