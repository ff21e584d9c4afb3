import { relative } from "node:path";
import { describe, expect, it } from "vitest";
import { ROOT } from "./support/modules.ts";
import { leavesOf, Reads, withProject } from "./support/recordReads.ts";

/** What the records keep. */
const RECORDS = [
  ["shared/model/parts/rotor.ts", "Rotor"],
  ["shared/model/parts/motor.ts", "Motor"],
  ["shared/model/parts/pack.ts", "Pack"],
  ["shared/model/parts/skirt.ts", "Skirt"],
  ["shared/model/parts/surface.ts", "Surface"],
  ["shared/model/tests/index.ts", "BenchTest"],
  ["shared/model/build.ts", "Build"],
] as const;

/** Forms show what they ask: that is no use of it. */
const FORMS = /^client\/views\/(parts\/specs|bench\/(forms|record|import))\//;
const isReader = (path: string): boolean =>
  /^(shared|server|client)\//.test(path) && !path.startsWith("shared/model/") && !FORMS.test(path);

/** Leaves that nothing needs to read by name, and why. */
const EXCEPT: readonly (readonly [leaf: RegExp, why: string])[] = [
  [/^\w+\.note$/, "free text, for people alone"],
  [
    /^\w+\.(retired|struckOut)$/,
    "free text; whether there is any is read for all alike in shared/model/withdrawn.ts",
  ],
  [/^Skirt\.outline/, "kept as typed; length and area stand beside it and are held to it in shared/model"],
  [/^BenchTest\.instruments\./, "stated uncertainties that the fits of other kinds take up next"],
];
/** Rooms that compute with what a record hands on to them. */
const COMPUTES = /^shared\/(physics|fit|decide)\//;

describe("every leaf of a record's schema", () => {
  it("is read outside the model and the forms, free text aside", () => {
    const unread = withProject((project) => {
      const reads = new Reads(project.checker);
      for (const name of project.program.getSourceFileNames()) {
        const path = relative(ROOT, name);
        const file = isReader(path) ? project.program.getSourceFile(name) : undefined;
        if (file) reads.add(file, COMPUTES.test(path));
      }
      const leaves = RECORDS.flatMap(([path, alias]) => leavesOf(project, path, alias));
      expect(leaves.length).toBeGreaterThan(150);
      return leaves.filter((leaf) => !reads.has(leaf)).map(({ path }) => path);
    });
    expect(unread.filter((path) => !EXCEPT.some(([leaf]) => leaf.test(path)))).toEqual([]);
  });
});
