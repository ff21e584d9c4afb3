import { describe, expect, it } from "vitest";
import type { Book } from "#shared/book/book.ts";
import { jointDoubt, jointsUnder } from "#shared/book/jointsUnder.ts";
import { nextTests } from "#shared/book/nextTest/nextTests.ts";
import { resolveBuild, solvable } from "#shared/book/resolve.ts";
import { jointSources } from "#shared/book/uncertainty/jointSources.ts";
import { uncertaintyAsked } from "#shared/book/uncertaintyAsked.ts";
import { sampledWithJoints } from "#shared/decide/joints/sampled.ts";
import { predictAny } from "#shared/physics/predictAny.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const demo = demoBook();
const crawler = demo.builds[0].data;
const BAR = { name: "Glazing bar", depth: 5e-4, width: 0.006, met: "either" as const };

function bookWith(joint: object): Book {
  return {
    ...demo,
    surfaces: demo.surfaces.map((surface) =>
      surface.id === crawler.surface
        ? { ...surface, data: { ...surface.data, joints: [{ ...BAR, ...joint }] } }
        : surface,
    ),
  };
}

describe("how well a joint is known", () => {
  it("of which nothing is stated: 0.1 mm and a tenth, 0.3 mm and a twentieth, each together", () => {
    expect(jointDoubt(BAR, "depth")).toEqual({ sd: Math.hypot(1e-4, 5e-5), stated: false });
    expect(jointDoubt(BAR, "width")).toEqual({ sd: Math.hypot(3e-4, 3e-4), stated: false });
    expect(jointDoubt({ ...BAR, depth: 0 }, "depth").sd).toBe(0);
  });

  it("as its page states it, a stated 0 included", () => {
    const stated = { ...BAR, depthUncertainty: 2e-5, widthUncertainty: 0 };
    expect(jointDoubt(stated, "depth")).toEqual({ sd: 2e-5, stated: true });
    expect(jointDoubt(stated, "width")).toEqual({ sd: 0, stated: true });
    expect(jointsUnder(bookWith(stated), crawler)?.joints[0].uncertain).toEqual({ depth: 2e-5, width: 0 });
  });

  it("as the surface's own list of uncertainties states it by path, a joint's own before that", () => {
    const listed = (joint: object): Book => {
      const book = bookWith(joint);
      const uncertainty = { "joints.0.depth": 3e-5, "joints.0.width": 2e-4 };
      const surfaces = book.surfaces.map((each) => ({ ...each, data: { ...each.data, uncertainty } }));
      return { ...book, surfaces };
    };
    const uncertain = (joint: object) => jointsUnder(listed(joint), crawler)?.joints[0].uncertain;
    expect(uncertain({})).toEqual({ depth: 3e-5, width: 2e-4 });
    expect(uncertain({ depthUncertainty: 2e-5 })).toEqual({ depth: 2e-5, width: 2e-4 });
    expect(jointSources(listed({}), crawler)["depth of the glazing bar"].from).toBe("stated");
  });

  it("is named with its mark in what the uncertainty is made of", () => {
    const sources = jointSources(bookWith({ depthUncertainty: 2e-5 }), crawler);
    expect(sources["depth of the glazing bar"]).toMatchObject({ from: "stated", test: null });
    expect(sources["depth of the glazing bar"].what).toMatch(/^depth of the glazing bar on .*, ±.0\.02.mm$/);
    expect(sources["width of the glazing bar"].from).toBe("default");
    expect(jointSources(bookWith({}), { ...crawler, skirt: null })).toEqual({});
  });
});

describe("a build of the book over a joint", () => {
  const book = bookWith({});
  const asked = (of: Book) => {
    const resolved = resolveBuild(of, crawler);
    const input = solvable(resolved);
    if (!input) throw new Error("expected numbers");
    const question = uncertaintyAsked(of, { build: crawler, resolved, prediction: predictAny(input) });
    if (!question) throw new Error("expected a question");
    return question;
  };

  it("names every share of the margin over it", () => {
    const { input, joints, asked: stated, sources } = asked(book);
    const { over } = sampledWithJoints({ build: input, joints }, { ...stated, samples: 256 });
    for (const { path } of over?.shares ?? []) expect(sources[path.split(" + ")[0]], path).toBeDefined();
    expect(over?.shares.map(({ path }) => path)).toContain("depth of the glazing bar");
  });

  it("has measuring the joint among its next tests, which narrows the margin over it", () => {
    const verdict = { angle: 180, mode: "driving" } as const;
    const coarse = bookWith({ depthUncertainty: 3e-4, met: "along" });
    const { over, tests, before } = nextTests(coarse, crawler, verdict, { samples: 512 });
    expect(over).toBe("the glazing bar");
    const measure = tests.find(({ key }) => key === "joint");
    expect(measure?.cut).toBeGreaterThan(0.05);
    expect((measure?.after.p95 ?? 0) - (measure?.after.p5 ?? 0)).toBeLessThan(
      (before?.p95 ?? 0) - (before?.p5 ?? 0),
    );
    const known = bookWith({ depthUncertainty: 1e-5, met: "along" });
    expect(nextTests(known, crawler, verdict, { samples: 512 }).tests.map(({ key }) => key)).not.toContain(
      "joint",
    );
  });
});
