import { describe, expect, it } from "vitest";
import { freshBook } from "./support/api.ts";
import { samples } from "./support/records.ts";

const IMPOSSIBLE_LIP = { ...samples.skirts, perimeter: 0.04, area: 0.0099 };

describe("a skirt whose lip can't enclose its area", () => {
  it("added: is refused with 422, both fields named, and nothing is stored", async () => {
    const { api } = freshBook();
    const { body } = await api.post("/api/v1/skirts").send(IMPOSSIBLE_LIP).expect(422);
    expect(body.error.code).toBe("contradiction");
    expect(body.error.fields.map(({ path }: { path: string }) => path)).toEqual(["perimeter", "area"]);
    expect((await api.get("/api/v1/skirts")).body.items).toEqual([]);
  });

  it("as a correction: is refused with 422, the stored one stays", async () => {
    const { api } = freshBook();
    const { body: stored } = await api.post("/api/v1/skirts").send(samples.skirts).expect(201);
    const at = `/api/v1/skirts/${stored.id}`;
    await api.put(at).set("If-Match", '"1"').send(IMPOSSIBLE_LIP).expect(422);
    expect((await api.get(at)).body).toEqual(stored);
  });
});
