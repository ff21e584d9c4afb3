import { describe, expect, it } from "vitest";
import { tooLarge } from "#client/views/bench/forms/save.ts";
import { filtersOf, isFiltered, pagePath, queryOf } from "#client/views/bench/list/filters.ts";

const NONE = { kind: "", part: "", text: "" };

describe("filtersOf and queryOf, the list's address", () => {
  it("give the filters back as they were set", () => {
    const filters = { kind: "pull", part: "rotor:b8", text: "pane" };
    expect(filtersOf(new URLSearchParams(queryOf(filters)))).toEqual(filters);
  });

  it("leave out what is no filter", () => {
    expect(filtersOf(new URLSearchParams("kind=weight&part=b8&saved=x"))).toEqual(NONE);
    expect(isFiltered(NONE)).toBe(false);
    expect(queryOf(NONE)).toEqual({});
  });
});

describe("pagePath, one page of the API's list", () => {
  it("asks for the kind, the part by its key, the text and the place", () => {
    const filters = { kind: "pull", part: "rotor:b8", text: " pane & roof " };
    expect(pagePath(filters, 25, "abc=")).toBe(
      "/tests?limit=25&kind=pull&rotor=b8&q=pane+%26+roof&cursor=abc%3D",
    );
    expect(pagePath(NONE, 25, null)).toBe("/tests?limit=25");
  });
});

describe("tooLarge, before a body is sent", () => {
  it("takes what the server takes and says how large the rest is", () => {
    // a JSON string has two quotes around its letters; the limit is 1 000 000 byte
    expect(tooLarge("x".repeat(1e6 - 2))).toBeNull();
    expect(tooLarge("x".repeat(1e6 - 1))).toMatch(/1\.0 MB to send, more than the 1 MB/);
    expect(tooLarge("é".repeat(1e6 - 2))).toMatch(/2\.0 MB/);
  });
});
