import { describe, expect, it } from "vitest";
import type { Book } from "#shared/book/book.ts";
import { bookOfBuild } from "#shared/book/bookOfBuild.ts";
import { buildUncertainty } from "#shared/book/buildUncertainty.ts";
import { plateOf } from "#shared/book/nextTest/plate.ts";
import { resolveBuild } from "#shared/book/resolve.ts";
import { surfaceRoughness } from "#shared/book/roughnessBasis.ts";
import type { BenchTest } from "#shared/model/tests/index.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const demo = demoBook();

/** Every test once more as if made on parts of another name, before and behind those of the demo. */
function crowded(book: Book): Book {
  const renamed = (data: BenchTest): BenchTest => {
    const parts = ["rotor", "motor", "pack", "skirt", "surface"] as const;
    const other = parts.flatMap((key) => (key in data ? [[key, "of another vehicle"] as const] : []));
    return { ...data, ...Object.fromEntries(other) };
  };
  const others = book.tests.map((test) => ({ ...test, id: `other ${test.id}`, data: renamed(test.data) }));
  return { ...book, tests: [...others, ...book.tests] };
}

describe("benchOfBuild", () => {
  it.each(demo.builds.map(({ id, data }) => [id, data] as const))(
    "of %s in a crowded book: resolves the build and its uncertainty to the last digit as the whole book does",
    (_, build) => {
      const book = crowded(demo);
      const part = bookOfBuild(book, build);
      const [whole, light] = [book, part].map((changedBook) => resolveBuild(changedBook, build));
      expect(light).toEqual(whole);
      expect(buildUncertainty(part, build, light)).toEqual(buildUncertainty(book, build, whole));
      expect(part.tests.length).toBeLessThan(book.tests.length / 2);
    },
  );

  it("of a build in a book that others use too: tells the surface's roughness and takes the plate as the whole book does", () => {
    for (const { data: build } of demo.builds) {
      const part = bookOfBuild(demo, build);
      const surface = demo.surfaces.find(({ id }) => id === build.surface);
      if (!surface) throw new Error("the demo has no such surface");
      expect(surfaceRoughness(part, surface)).toEqual(surfaceRoughness(demo, surface));
      expect(plateOf(part)).toEqual(plateOf(demo));
    }
  });

  it("keeps the rigs that calibrate a skirt, though the build has another rotor, motor and pack", () => {
    const [pane, other] = ["pane-crawler", "ridge-runner"].map((id) => {
      const build = demo.builds.find((each) => each.id === id)?.data;
      if (!build) throw new Error(`the demo has no ${id}`);
      return build;
    });
    const { rotor, diameter, motor, pack } = other;
    const build = { ...pane, rotor, diameter, motor, pack };
    const [whole, light] = [demo, bookOfBuild(demo, build)].map((changedBook) =>
      resolveBuild(changedBook, build),
    );
    expect(whole.gap.basis).toBe("calibrated");
    expect(light).toEqual(whole);
  });

  it("of a part of a book: keeps it as it is", () => {
    const build = demo.builds[0].data;
    const part = bookOfBuild(demo, build);
    expect(bookOfBuild(part, build)).toEqual(part);
  });
});
