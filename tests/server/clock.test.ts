import { describe, expect, it } from "vitest";
import { freshBook } from "./support/api.ts";
import { samples } from "./support/records.ts";

/** A clock that is set by hand. */
function handClock(start: string) {
  let now = Date.parse(start);
  const clock = () => {
    now += 1000;
    return new Date(now);
  };
  const set = (to: string) => {
    now = Date.parse(to);
  };
  return { clock, set };
}

describe("a machine whose clock is set back by a year between two writes", () => {
  it("loses nothing: revisions keep their order, lists hold each record once, the archive can be taken in", async () => {
    const { clock, set } = handClock("2026-03-01T08:00:00Z");
    const book = freshBook(clock);
    const { api } = book;
    const add = async (name: string) =>
      (
        await api
          .post("/api/v1/motors")
          .send({ ...samples.motors, name })
          .expect(201)
      ).body.id as string;
    const ids = [await add("before"), await add("before too")];
    set("2025-03-01T08:00:00Z");
    ids.push(await add("after"));
    const corrected = await api
      .put(`/api/v1/motors/${ids[0]}`)
      .set("If-Match", '"1"')
      .send({ ...samples.motors, name: "corrected" })
      .expect(200);
    expect(corrected.body.revision).toBe(2);
    const states = (await api.get(`/api/v1/motors/${ids[0]}/revisions`)).body.items;
    expect(states.map(({ revision }: { revision: number }) => revision)).toEqual([1, 2]);

    const listed: string[] = [];
    for (let cursor: string | null = ""; cursor !== null; ) {
      const page = await api.get(`/api/v1/motors?limit=1${cursor && `&cursor=${cursor}`}`).expect(200);
      const { items, next } = page.body as { items: { id: string }[]; next: string | null };
      listed.push(...items.map(({ id }) => id));
      cursor = next;
    }
    expect(listed.sort()).toEqual([...ids].sort());

    await api.delete(`/api/v1/motors/${ids[1]}`).expect(204);
    await api.post(`/api/v1/motors/${ids[1]}/restore`).expect(200);
    const { body: whole } = await api.get("/api/v1/archive").expect(200);
    await freshBook(clock).api.post("/api/v1/archive").send(whole).expect(201);
  });

  it("an Idempotency-Key of before is known after it, and a copy of after is listed", async () => {
    const { clock, set } = handClock("2026-03-01T08:00:00Z");
    const { api } = freshBook(clock);
    const add = () =>
      api.post("/api/v1/motors").set("Idempotency-Key", "of-before").send(samples.motors).expect(201);
    const first = await add();
    set("2025-03-01T08:00:00Z");
    expect((await add()).body).toEqual(first.body);
    const { body } = await api.post("/api/v1/bench/empty").expect(200);
    const { items } = (await api.get("/api/v1/backups")).body;
    expect(items).toEqual([expect.objectContaining({ name: body.backup, reason: "before-empty" })]);
  });
});
