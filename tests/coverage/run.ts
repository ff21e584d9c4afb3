import { writeFileSync } from "node:fs";
import { demoBook } from "#tests/support/demoBook.ts";
import { coveredBy } from "./covered.ts";
import { leftOut } from "./leftOut.ts";
import { outsideLines } from "./outside.ts";
import { accuracyPage } from "./page.ts";
import { SCENARIOS } from "./scenarios.ts";

/** `npm run coverage`, or fewer makers: `npm run coverage -- 50`. Run from the project's top, after the published tests. */
const makers = Number(process.argv[2] ?? 400);
const demo = demoBook();
const outside = outsideLines(process.env.GRIPCURVE_OUTSIDE ?? ".build/outside");
const rows = SCENARIOS.map((scenario) => {
  const covered = coveredBy(demo, scenario, makers);
  console.info(`${scenario.name}: ${(100 * covered.inside).toFixed(1)} % inside`);
  return { scenario, covered };
});
writeFileSync("docs/accuracy.md", accuracyPage({ makers, rows, outside, leftOut: leftOut(demo) }));
