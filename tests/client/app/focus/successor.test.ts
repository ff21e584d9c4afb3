import { describe, expect, it } from "vitest";
import { successor } from "#client/app/focus/successor.ts";

const none = () => false;
const next = (before: string, lost: string, now: string, isWished: (control: string) => boolean = none) =>
  successor([...before], lost, [...now], isWished);

describe("the control that comes after the one that went", () => {
  it.each([
    ["with its whole row gone, is the next row's first", "abcdef", "c", "abef", "e"],
    ["at the end, is the one before it", "abc", "c", "ab", "b"],
    ["replaced by a question, is the question's first", "abc", "b", "axyc", "x"],
    ["first of all and replaced, is what took its place", "abc", "a", "xbc", "x"],
    ["last of all and replaced, is what took its place", "abc", "c", "abx", "x"],
    ["with all that follows gone as well, is what took their place", "abcd", "b", "ax", "x"],
    ["with controls gone before it, is still the next", "abcd", "c", "bd", "d"],
  ])("%s", (_case, before, lost, now, expected) => {
    expect(next(before, lost, now)).toBe(expected);
  });

  it("among several that took its place, is the wished one", () => {
    expect(next("abc", "b", "axyc", (control) => control === "y")).toBe("y");
  });

  it("wished but elsewhere, is not taken: only what took its place counts", () => {
    expect(next("abc", "b", "acy", (control) => control === "y")).toBe("c");
  });

  it("with nothing left of what was there, is none", () => {
    expect(next("abc", "b", "xyz")).toBeNull();
    expect(next("a", "a", "")).toBeNull();
  });
});
