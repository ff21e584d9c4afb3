import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { resolveBuild } from "#shared/book/resolve.ts";
import type { ParkedMode } from "#shared/physics/hold/holdAt.ts";
import { type PredictInput, type Prediction, predict } from "#shared/physics/predict.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const book = demoBook();
const crawler = book.builds.find(({ id }) => id === "beam-crawler")?.data;
const page = readFileSync(new URL("../../../docs/ceiling-and-wall.md", import.meta.url), "utf8");
const NAMES: Readonly<Record<string, string>> = { liftOff: "lifts off", slide: "slips", tip: "tips" };

function inputOn(gear: string | null): PredictInput {
  if (!crawler) throw new Error("The demo has no beam crawler.");
  const { input } = resolveBuild(book, { ...crawler, gear });
  if (!input) throw new Error("The beam crawler has no numbers.");
  return input;
}

/** "| rigid | wall | 9.06 N | 0.60 mm | 10.57 N | 1.17 | slips |" */
function lineOf(title: string, name: string, angle: number, input: PredictInput): string {
  const { attitudes }: Prediction = predict(input, [angle]);
  const [{ parked, gaps }] = attitudes;
  const mode = parked.governs[parked.governs.length - 1] as ParkedMode;
  const gap = gaps?.[mode] ?? input.skirt.gap;
  const rigid = { ...input, vehicle: { ...input.vehicle, verticalStiffness: null } };
  const pull = predict({ ...rigid, skirt: { ...input.skirt, gap } }, []).suction;
  const margin = parked.margin ?? 0;
  const cells = [title, name, `${(pull / margin).toFixed(1)} N`, `${(1000 * gap).toFixed(2)} mm`];
  return `| ${[...cells, `${pull.toFixed(1)} N`, margin.toFixed(2), NAMES[mode]].join(" | ")} |`;
}

describe("docs/ceiling-and-wall.md", () => {
  const gears = [
    ["rigid", null],
    ["rubber tyres", "rubber-tyres"],
    ["foam tyres", "foam-tyres"],
  ] as const;
  const attitudes = [
    ["wall", 90],
    ["overhang, 120°", 120],
    ["ceiling", 180],
  ] as const;

  it.each(gears)(
    "on %s: every line of the table is what the demo's beam crawler computes to",
    (title, gear) => {
      for (const [name, angle] of attitudes)
        expect(page).toContain(lineOf(title, name, angle, inputOn(gear)));
    },
  );
});
