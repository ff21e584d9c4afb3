import { describe, expect, it } from "vitest";
import { nameWithStanding, offered } from "#shared/model/withdrawn.ts";

const parts = [
  { id: "a", data: { name: "In use" } },
  { id: "b", data: { name: "Cracked", retired: "a crack" } },
];

describe("offered, parts of which one is retired", () => {
  it("leaves the retired one out where a part is chosen anew", () => {
    expect(offered(parts, null).map(({ id }) => id)).toEqual(["a"]);
  });

  it("keeps it, marked, where it is chosen already", () => {
    expect(offered(parts, "b").map(({ data }) => nameWithStanding(data))).toEqual([
      "In use",
      "Cracked (retired)",
    ]);
  });
});
