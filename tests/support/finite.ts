import { expect } from "vitest";

/** Every number anywhere in an answer, with its path. */
export function numbersIn(value: unknown, path = ""): { path: string; value: number }[] {
  if (typeof value === "number") return [{ path, value }];
  if (value === null || typeof value !== "object") return [];
  return Object.entries(value).flatMap(([key, part]) => numbersIn(part, `${path}.${key}`));
}

/** Passes when no number in the answer is NaN or infinite, and no text speaks of one. */
export function expectAllFinite(answer: unknown): void {
  expect(numbersIn(answer).filter(({ value }) => !Number.isFinite(value))).toEqual([]);
  expect(JSON.stringify(answer)).not.toMatch(/NaN|Infinity|undefined/);
}
