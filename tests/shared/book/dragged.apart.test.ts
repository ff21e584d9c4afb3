import { beforeEach, describe, expect, it, vi } from "vitest";
import { buildUncertainty, uncertaintySteps } from "#shared/book/buildUncertainty.ts";
import { calibrationRequest, calibrationToDo } from "#shared/book/calibration.ts";
import { calibrationSteps } from "#shared/book/calibrationSteps.ts";
import { resolveBuild } from "#shared/book/resolve.ts";
import { Gains } from "#shared/book/uncertainty/gains.ts";
import { pointLaw } from "#shared/decide/sampledPoint.ts";
import { fitLinear } from "#shared/numeric/leastSquares.ts";
import { demoBook } from "#tests/support/demoBook.ts";

vi.mock("#shared/numeric/leastSquares.ts", async (original) => {
  const { fitLinear, ...rest } = await original<typeof import("#shared/numeric/leastSquares.ts")>();
  return { ...rest, fitLinear: vi.fn(fitLinear) };
});
vi.mock("#shared/decide/sampledPoint.ts", async (original) => {
  const { pointLaw, ...rest } = await original<typeof import("#shared/decide/sampledPoint.ts")>();
  return { ...rest, pointLaw: vi.fn(pointLaw) };
});

const MOVES = 10;

/** What is dragged, by how much with each move. */
const DRAGS = [
  ["the gap", (i: number) => ({ overrides: { gap: 4e-4 + i * 1e-5 } })],
  ["the charge", (i: number) => ({ charge: 0.5 + i * 0.01 })],
  ["the throttle", (i: number) => ({ supply: { duty: 0.5 + i * 0.01 } })],
] as const;

describe("what is uncertain in a build, gathered anew with each move of a setting", () => {
  beforeEach(() => {
    vi.restoreAllMocks();
  });

  it.each(DRAGS)(
    "with %s dragged over ten moves: nothing is fitted that the setting doesn't touch",
    (_, change) => {
      const book = { ...demoBook() };
      const build = book.builds[0].data;
      const gathered = (i: number) => {
        const moved = { ...build, ...change(i) } as typeof build;
        const whole = { ...moved, supply: { ...build.supply, ...moved.supply } };
        return buildUncertainty(book, whole, resolveBuild(book, whole));
      };
      const first = gathered(0);
      const fits = vi.mocked(fitLinear).mock.calls.length;
      const derivatives = vi.mocked(pointLaw).mock.calls.length;
      expect(fits).toBeGreaterThan(0);
      expect(derivatives).toBeGreaterThan(0);
      const gains = vi.spyOn(Gains.prototype, "told");
      const last = Array.from({ length: MOVES }, (_, i) => gathered(i + 1)).at(-1);
      expect(vi.mocked(fitLinear).mock.calls.length).toBe(fits);
      expect(vi.mocked(pointLaw).mock.calls.length).toBe(derivatives);
      expect(gains).not.toHaveBeenCalled();
      expect(last?.sources).toEqual(first.sources);
      expect(last?.shared).toEqual(first.shared);
    },
  );

  it("of another build between two moves: each as it would be by itself", () => {
    const book = { ...demoBook() };
    const of = (place: number, at = book) => {
      const build = at.builds[place].data;
      return buildUncertainty(at, build, resolveBuild(at, build));
    };
    const [one, other, again] = [of(0), of(1), of(0)];
    expect(again).toEqual(one);
    expect(other).toEqual(of(1, { ...demoBook() }));
  });
});

describe("what is uncertain in a build, gathered in steps", () => {
  it("comes to the same as at once, and is then gathered without a fit or a derivative more", () => {
    const [stepped, whole] = [{ ...demoBook() }, { ...demoBook(), tests: [...demoBook().tests] }];
    const build = stepped.builds[0].data;
    const resolved = resolveBuild(stepped, build);
    const steps = uncertaintySteps(stepped, build, resolved);
    let count = 0;
    let step = steps.next();
    for (; !step.done; step = steps.next()) count++;
    expect(count).toBeGreaterThan(5);
    expect(step.value).toEqual(buildUncertainty(whole, build, resolveBuild(whole, build)));
    const fits = vi.mocked(fitLinear).mock.calls.length;
    const derivatives = vi.mocked(pointLaw).mock.calls.length;
    expect(buildUncertainty(stepped, build, resolved)).toEqual(step.value);
    expect(vi.mocked(fitLinear).mock.calls.length).toBe(fits);
    expect(vi.mocked(pointLaw).mock.calls.length).toBe(derivatives);
  });
});

describe("what a calibration is worked out from, gathered in steps", () => {
  it("is the same request, and at the last step nothing of it is left to fit", () => {
    const [stepped, whole] = [{ ...demoBook() }, { ...demoBook() }];
    const build = stepped.builds[0].data;
    const steps = calibrationSteps(stepped, build);
    let fits = 0;
    let step = steps.next();
    for (; !step.done; step = steps.next()) fits = vi.mocked(fitLinear).mock.calls.length;
    expect(vi.mocked(fitLinear).mock.calls.length).toBe(fits);
    expect(step.value).toEqual(calibrationToDo(whole, build));
    expect(calibrationRequest(stepped, build)).toEqual(calibrationRequest(whole, build));
  });
});
