import { describe, expect, it } from "vitest";
import { addParts, freshBook } from "./support/api.ts";
import { samplePull, samples } from "./support/records.ts";

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

describe("readings that contradict themselves", () => {
  const grams = (value: number) => ({ value, unit: "g" });
  const wrong = { held: grams(1400), letGo: { value: 1.3, unit: "kg" } };
  const right = { held: grams(420), letGo: grams(450) };

  it("a pull that let go below what it held: 422, the field and the row named in the user's units, nothing stored", async () => {
    const book = freshBook();
    const parts = await addParts(book);
    const sent = samplePull(parts, { rows: [right, right, right, wrong] });
    const { body } = await book.api.post("/api/v1/tests").send(sent).expect(422);
    expect(body.error).toMatchObject({
      code: "contradiction",
      fields: [
        {
          path: "rows.3.letGo",
          message:
            "Row 4: let go at 1.3\u202fkg, below the 1400\u202fg it held. Correct one of them, or set the row aside.",
        },
      ],
    });
    expect(book.store.counts().tests).toBe(0);
    const aside = samplePull(parts, { rows: [right, { ...wrong, setAside: "misread" }] });
    await book.api.post("/api/v1/tests").send(aside).expect(201);
  });

  it("a slide that held steeper than it slid: 422, also as a correction; the stored test stays", async () => {
    const book = freshBook();
    const { surface } = await addParts(book);
    const degrees = (value: number) => ({ value, unit: "°" });
    const test = (row: object) => ({
      kind: "friction",
      date: "2026-03-14",
      surface,
      contact: "wheels",
      rows: [row],
    });
    const { body: stored } = await book.api
      .post("/api/v1/tests")
      .send(test({ held: degrees(38), slid: degrees(40) }))
      .expect(201);
    const { body } = await book.api
      .put(`/api/v1/tests/${stored.id}`)
      .set("If-Match", '"1"')
      .send(test({ held: degrees(45), slid: degrees(40) }))
      .expect(422);
    expect(body.error.fields.map(({ path }: { path: string }) => path)).toEqual(["rows.0.slid"]);
    expect((await book.api.get(`/api/v1/tests/${stored.id}`)).body).toEqual(stored);
  });
});
