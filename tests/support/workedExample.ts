import { readFileSync } from "node:fs";
import { expect } from "vitest";

export interface WorkedExample {
  readonly request: object;
  readonly answer: unknown;
}

/** Two JSON blocks of a page of docs/method, the first two unless another pair is wanted: a request, and what its answer holds, rounded. */
export function workedExample(page: string, pair = 0): WorkedExample {
  const text = readFileSync(new URL(`../../docs/method/${page}.md`, import.meta.url), "utf8");
  const blocks = [...text.matchAll(/```json\n([^`]*)```/g)].map(([, json]) => JSON.parse(json));
  const [request, answer] = blocks.slice(2 * pair);
  return { request, answer };
}

/** Passes when an answer holds all that a page prints of it, numbers to the four digits printed. */
export function expectPrinted(answer: unknown, printed: unknown, at = "answer"): void {
  if (typeof printed === "number") {
    expect(Math.abs(Number(answer) - printed), `${at}: ${answer} against ${printed}`).toBeLessThanOrEqual(
      5.1e-4 * Math.abs(printed),
    );
    return;
  }
  if (typeof printed !== "object" || printed === null) {
    expect(answer, at).toBe(printed);
    return;
  }
  for (const [key, inner] of Object.entries(printed))
    expectPrinted((answer as Record<string, unknown>)[key], inner, `${at}.${key}`);
}
