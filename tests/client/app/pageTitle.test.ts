import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
import { demoBook } from "#tests/support/demoBook.ts";

vi.stubGlobal("sessionStorage", { getItem: () => null, setItem: () => undefined });
const { pageTitle } = await import("#client/app/pageTitle.ts");
const { parseRoute, route } = await import("#client/app/router.ts");
const { currentBook } = await import("#client/state/book.ts");

const book = demoBook();
beforeAll(() => {
  currentBook.value = book;
});
afterAll(() => {
  currentBook.value = null;
});

function titleAt(path: string): string {
  route.value = parseRoute(path);
  return pageTitle(route.value);
}

describe("the title of the page", () => {
  it("of a build's view: names the view and the build", () => {
    expect(titleAt("/match/ridge-runner")).toBe("Match: Ridge runner, tube fan · Gripcurve");
    expect(titleAt("/fit-up/pane-crawler")).toBe("Fit-up: Pane crawler, second rotor · Gripcurve");
  });

  it("of a part, a test, a new one: names it", () => {
    const [test] = book.tests;
    expect(titleAt("/curves/rotors/swept-nine")).toBe("Curves: Swept nine · Gripcurve");
    expect(titleAt("/curves/record")).toBe("Curves: predicted and measured · Gripcurve");
    expect(titleAt("/parts/motors/bell-18")).toMatch(/^Parts: .+ · Gripcurve$/);
    expect(titleAt(`/bench/${test.id}`)).toBe(`Bench: ${test.data.title} · Gripcurve`);
    expect(titleAt("/bench/new/curve")).toBe("Bench: new curve test · Gripcurve");
  });

  it("of a view that says all by itself, or of a record that isn't there: names the view", () => {
    expect(titleAt("/bench")).toBe("Bench · Gripcurve");
    expect(titleAt("/choose")).toBe("Choose · Gripcurve");
    expect(titleAt("/parts/motors/nobody")).toBe("Parts · Gripcurve");
  });
});
