import type { SetDifference } from "../fit/roughnessJoint.ts";
import { type Board, type Origin, type Row, subscript, type Working, workedOut } from "../physics/working.ts";
import type { Resolved } from "./resolve/resolved.ts";
import type { SurfaceRoughness } from "./roughnessBasis.ts";
import { ALLOWANCE_TITLE, FURTHER_TITLE } from "./roughnessTitles.ts";

const DOC = "docs/method/restriction.md";
const BIRGE = `weighted least squares with the Birge ratio (1932); ${DOC}`;

const HEIGHT = "Each reading's height is the one at which the skirt's leak passes its flow.";

/** One skirt at one gap, on the surface and on the smooth one. */
function setWorking({ rough, smooth, difference }: SetDifference, k: number): Working {
  return workedOut(
    {
      title: `how much further it stands off, skirt and gap ${k + 1}`,
      equation: "d = h_rough − h_smooth,  s² = s_rough² + s_smooth²",
      output: [`d${subscript(k + 1)}`, "m"],
      source: BIRGE,
      assumptions: [HEIGHT, "The skirt stood the same in all of these tests."],
    },
    [
      [["h_rough", "height of the lip by the tests on this surface", "m"], rough.height],
      [["s_rough", "its standard uncertainty", "m"], rough.error],
      [["h_smooth", "height of the lip by the tests on the smoother one", "m"], smooth.height],
      [["s_smooth", "its standard uncertainty", "m"], smooth.error],
    ],
    difference,
  );
}

type Told = NonNullable<SurfaceRoughness["told"]>;

function furtherWorking({ difference, uncertainty, inflation, tests, sets }: Told): Working {
  const each = sets.flatMap((set, k): Row[] => [
    [[`d${subscript(k + 1)}`, `difference, skirt and gap ${k + 1}`, "m"], set.difference],
    [[`s${subscript(k + 1)}`, "its standard uncertainty", "m"], Math.sqrt(set.variance)],
  ]);
  return workedOut(
    {
      title: FURTHER_TITLE,
      equation: "d = Σ (d_k/s_k²) / Σ (1/s_k²),  s_d = b / √(Σ (1/s_k²))",
      output: ["d", "m"],
      source: BIRGE,
      assumptions: ["One pair of tests can't show how well the skirt is set anew."],
    },
    [
      [["n", "leak tests whose height counts", ""], tests],
      ...each,
      [["b", "scatter between tests over that of their readings, 1 at least", ""], inflation],
      [["s_d", "standard uncertainty", "m"], uncertainty],
    ],
    difference,
  );
}

/** Null where the stated one stands. */
function allowanceWorking({ basis, value, sd, told, against }: SurfaceRoughness): Working | null {
  if (basis === "stated" || !told || !against) return null;
  const { roughness, uncertainty } = against.data;
  return workedOut(
    {
      title: ALLOWANCE_TITLE,
      equation: "r = r_smooth + d,  s_r² = s_smooth² + s_d²",
      output: ["r", "m"],
      source: DOC,
      assumptions: ["Used since d is more than twice its standard uncertainty."],
    },
    [
      [["r_smooth", `allowance that is stated of ${against.data.name}`, "m"], roughness],
      [["d", "how much further the lip stands off here", "m"], told.difference],
      [
        ["s_smooth", "standard uncertainty that is stated of it, 0 where none is", "m"],
        uncertainty.roughness ?? 0,
      ],
      [["s_d", "standard uncertainty of the difference", "m"], told.uncertainty],
      ...(sd === null ? [] : [[["s_r", "standard uncertainty of the allowance", "m"], sd] as const]),
    ],
    value,
  );
}

function originsOf({ told, toldBy, against }: SurfaceRoughness): Origin[] {
  if (!told || !against) return [];
  const { name, roughness } = against.data;
  return [
    { symbol: "n", value: told.tests, what: "Leak tests of one skirt at one gap on both.", tests: toldBy },
    { symbol: "r_smooth", value: roughness, what: `Stated on the page of ${name}.`, tests: [] },
  ];
}

/**
 * How a surface's roughness allowance came about, as far as leak tests tell it.
 *
 *     allowance, difference from the smoother surface, and that of each skirt at each gap
 *
 * @param roughness - of the surface [m]
 * @returns its workings, down to the leak tests [SI]; none where no tests can be compared
 *
 * Valid and source: as {@link surfaceRoughness}
 */
export function roughnessBoard(roughness: SurfaceRoughness): Board {
  const { told } = roughness;
  if (!told) return { workings: [], origins: [] };
  const allowance = allowanceWorking(roughness);
  return {
    workings: [...(allowance ? [allowance] : []), furtherWorking(told), ...told.sets.map(setWorking)],
    origins: originsOf(roughness),
  };
}

/**
 * How the clearance under a build's lip came about: its gap and what the surface adds.
 *
 *     h = h_gap + r
 *
 * @param resolved - the build's numbers [SI]
 * @param surface - what it stands on, by name
 * @returns its working, and those of an allowance that tests tell [SI]; none where no gap is taken
 *
 * Valid and source: docs/method/restriction.md
 */
export function clearanceBoard({ input, gap, roughness }: Resolved, surface: string): Board {
  if (!input || !roughness) return { workings: [], origins: [] };
  const clearance = workedOut(
    { title: "clearance under the lip", equation: "h = h_gap + r", output: ["h", "m"], source: DOC },
    [
      [["h_gap", "gap", "m"], gap.value],
      [["r", `roughness allowance of ${surface}`, "m"], roughness.value],
    ],
    gap.value + roughness.value,
  );
  const what = `Stated on the page of ${surface}.`;
  const stated: Origin[] =
    roughness.basis === "stated" ? [{ symbol: "r", value: roughness.value, what, tests: [] }] : [];
  const below = roughnessBoard(roughness);
  return { workings: [clearance, ...below.workings], origins: [...stated, ...below.origins] };
}
