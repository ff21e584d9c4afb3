import { describe, expect, it } from "vitest";
import { href, parseRoute } from "#client/app/router.ts";

describe("parseRoute", () => {
  it.each([
    ["/", "match", null],
    ["/match", "match", null],
    ["/match/pane-crawler", "match", "pane-crawler"],
    ["/bench", "bench", null],
    ["/bench/new/curve", "bench", "new/curve"],
    ["/curves/rotors/b8", "curves", "rotors/b8"],
    ["/nothing/here", "missing", "nothing/here"],
    ["/manifest.json", "missing", "manifest.json"],
    ["/match/100%", "match", "100%"],
  ])("reads %s, as an address typed in, as view %s with id %s", (address, view, id) => {
    expect(parseRoute(address)).toMatchObject({ view, id });
  });

  it("keeps the query, beside a path, as parameters", () => {
    expect(parseRoute("/match/a", "?over=b,c").query.get("over")).toBe("b,c");
  });
});

describe("href", () => {
  it("writes an address, for an id with odd letters, that reads back as the same route", () => {
    const address = href("match", "größe 8", { gap: "0.0012" });
    const [path, search] = address.split("?");
    expect(parseRoute(path, search)).toMatchObject({ view: "match", id: "größe 8" });
    expect(parseRoute(path, search).query.get("gap")).toBe("0.0012");
  });

  it("leaves out what is not there, without id and query, to give the bare view", () => {
    expect(href("bench")).toBe("/bench");
  });
});
