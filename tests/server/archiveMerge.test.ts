import { describe, expect, it } from "vitest";
import { type Archive, compare, differing, merge, readArchive } from "#client/views/bench/archive/archive.ts";
import { addBook, freshBook } from "./support/api.ts";
import { samples } from "./support/records.ts";

type Api = ReturnType<typeof freshBook>["api"];

const archiveOf = async (api: Api): Promise<Archive> => (await api.get("/api/v1/archive").expect(200)).body;
const take = (api: Api, body: Archive) => api.post("/api/v1/archive?replace=true").send(body);
const put = (api: Api, path: string, revision: number, data: object) =>
  api.put(`/api/v1/${path}`).set("If-Match", `"${revision}"`).send(data).expect(200);

/** Two books that were one: in each the same surface says something else since, and each has gained a motor. */
async function parted() {
  const mine = freshBook();
  const { parts } = await addBook(mine);
  const theirs = freshBook();
  await take(theirs.api, await archiveOf(mine.api)).expect(201);
  const surface = (await mine.api.get("/api/v1/surfaces")).body.items[0];
  await put(mine.api, `surfaces/${surface.id}`, surface.revision, { ...surface.data, note: "mine" });
  await put(theirs.api, `surfaces/${surface.id}`, surface.revision, { ...surface.data, note: "theirs" });
  await mine.api
    .post("/api/v1/motors")
    .send({ ...samples.motors, name: "only mine" })
    .expect(201);
  await theirs.api
    .post("/api/v1/motors")
    .send({ ...samples.motors, name: "only theirs" })
    .expect(201);
  return { mine, theirs, surface, parts };
}

describe("an archive beside a book", () => {
  it("is compared record by record: new, same, different, in the book alone", async () => {
    const { mine, theirs, surface } = await parted();
    const [own, given] = [await archiveOf(mine.api), await archiveOf(theirs.api)];
    const { added, own: alone, conflicts, same } = compare(own, given);
    const all = Object.values(own.records).reduce((sum, list) => sum + list.length, 0);
    expect([added, alone, same]).toEqual([1, 1, all - 2]);
    expect(conflicts.map(({ key }) => key)).toEqual([`surfaces/${surface.id}`]);
    expect(differing(conflicts[0].mine.data, conflicts[0].theirs.data)).toEqual([
      { path: "note", mine: "mine", theirs: "theirs" },
    ]);
  });

  it.each([
    ["the book's own", false, "mine", 2],
    ["the archive's", true, "theirs", 3],
  ] as const)(
    "merged, keeping %s: both motors are there, what gave way stays in the history",
    async (_which, takesTheirs, note, states) => {
      const { mine, theirs, surface } = await parted();
      const chosen = new Set(takesTheirs ? [`surfaces/${surface.id}`] : []);
      const merged = merge(await archiveOf(mine.api), await archiveOf(theirs.api), chosen);
      const { body } = await take(mine.api, merged).expect(201);
      expect(body.backup).toMatch(/before-import\.bak$/);
      const { body: motors } = await mine.api.get("/api/v1/motors");
      const names = motors.items.map((each: { data: { name: string } }) => each.data.name);
      expect(names).toEqual(expect.arrayContaining(["only mine", "only theirs"]));
      const { body: read } = await mine.api.get(`/api/v1/surfaces/${surface.id}`);
      expect(read.data.note).toBe(note);
      const { body: history } = await mine.api.get(`/api/v1/surfaces/${surface.id}/revisions`);
      expect(history.items).toHaveLength(states);
    },
  );

  it("merged a second time: nothing is doubled", async () => {
    const { mine, theirs } = await parted();
    const given = await archiveOf(theirs.api);
    await take(mine.api, merge(await archiveOf(mine.api), given, new Set())).expect(201);
    const once = await archiveOf(mine.api);
    const twice = merge(once, given, new Set());
    expect({ ...twice, exportedAt: "" }).toEqual({ ...once, exportedAt: "" });
  });

  it("with what was deleted here: it comes back as its next state", async () => {
    const { mine, theirs } = await parted();
    const { body: list } = await theirs.api.get("/api/v1/motors");
    const both = (await mine.api.get("/api/v1/motors")).body.items.map((each: { id: string }) => each.id);
    const spare = list.items.find((each: { data: { name: string } }) => each.data.name === "only theirs");
    const merged = merge(await archiveOf(mine.api), await archiveOf(theirs.api), new Set());
    await take(mine.api, merged).expect(201);
    await mine.api.delete(`/api/v1/motors/${spare.id}`).expect(204);
    await take(mine.api, merge(await archiveOf(mine.api), await archiveOf(theirs.api), new Set())).expect(
      201,
    );
    const { body: back } = await mine.api.get(`/api/v1/motors/${spare.id}`).expect(200);
    expect(back.revision).toBe(2);
    expect(both).not.toContain(spare.id);
    expect((await archiveOf(mine.api)).deletions).toEqual([]);
  });
});

describe("a file that is no archive", () => {
  it.each([
    "",
    "{",
    "[]",
    '{"format":"other"}',
    '{"format":"gripcurve-bench","records":{"tests":5},"revisions":{}}',
  ])("%j: says why", (text) => {
    expect(readArchive(text)).toHaveProperty("message", expect.stringMatching(/no archive of Gripcurve: /));
  });
});
