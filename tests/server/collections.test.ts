import { describe, expect, it } from "vitest";
import { addBook, addParts, freshBook } from "./support/api.ts";
import { sampleBuild, sampleCurve, samplePull, samples } from "./support/records.ts";

describe("every collection, by each verb", () => {
  it.each(Object.entries(samples))(
    "%s: adds, reads, corrects, removes and remembers",
    async (name, sample) => {
      const { api } = freshBook();
      const base = `/api/v1/${name}`;
      const created = await api.post(base).send(sample).expect(201);
      const { id } = created.body;
      expect(id).toMatch(/^[a-z0-9-]+$/);
      expect(created.headers).toMatchObject({ etag: '"1"', location: `${base}/${id}` });
      expect(created.body).toMatchObject({ revision: 1, data: sample });

      const read = await api.get(`${base}/${id}`).expect(200);
      expect(read.body).toEqual(created.body);
      expect(read.headers.etag).toBe('"1"');
      await api.get(`${base}/${id}`).set("If-None-Match", '"1"').expect(304);

      const change = { ...sample, note: "weighed again" };
      const corrected = await api.put(`${base}/${id}`).set("If-Match", '"1"').send(change).expect(200);
      expect(corrected.headers.etag).toBe('"2"');
      expect(corrected.body).toMatchObject({ id, revision: 2, createdAt: created.body.createdAt });
      expect(corrected.body.updatedAt > created.body.updatedAt).toBe(true);

      const list = await api.get(base).expect(200);
      expect(list.body).toEqual({ items: [corrected.body], next: null });

      await api.delete(`${base}/${id}`).set("If-Match", '"1"').expect(412);
      await api.delete(`${base}/${id}`).set("If-Match", '"2"').expect(204);
      await api.get(`${base}/${id}`).expect(404);
      const past = await api.get(`${base}/${id}/revisions`).expect(200);
      expect(past.body.items).toEqual([created.body, corrected.body]);
    },
  );

  it("builds and tests: are kept with the readings as typed and the defaults filled in", async () => {
    const book = freshBook();
    const { build, pull, parts } = await addBook(book);
    expect(build.data).toMatchObject({ ...parts, charge: 0.6, targetMargin: 1.5 });
    expect(pull.data.rows).toEqual([{ held: { value: 420, unit: "g" }, letGo: { value: 450, unit: "g" } }]);
    expect(pull.data.duty).toEqual({ value: 100, unit: "%" });
    expect(pull.id).toMatch(/^pull-on-the-pane-/);
  });
});

describe("how the book stood when a list was read", () => {
  it("is said with every list as GET /bench says it, and is another after a write to any collection", async () => {
    const { api } = freshBook();
    const said = async (name: string) =>
      (await api.get(`/api/v1/${name}`).expect(200)).headers["book-written"];
    const standing = async () => (await api.get("/api/v1/bench").expect(200)).body.written;
    const before = await standing();
    for (const name of Object.keys(samples)) expect(await said(name)).toBe(before);
    await api.post("/api/v1/rotors").send(samples.rotors).expect(201);
    const after = await standing();
    expect(after).not.toBe(before);
    for (const name of Object.keys(samples)) expect(await said(name)).toBe(after);
  });
});

describe("a correction, by what the writer knew", () => {
  it("without If-Match: 428; with an outdated or weak one: 412, and nothing changes", async () => {
    const { api } = freshBook();
    const { body } = await api.post("/api/v1/motors").send(samples.motors);
    const at = `/api/v1/motors/${body.id}`;
    const change = { ...samples.motors, kv: 1 };
    const missing = await api.put(at).send(change).expect(428);
    expect(missing.body.error.code).toBe("if-match-required");
    for (const tag of ['"7"', 'W/"1"', "1"]) {
      const stale = await api.put(at).set("If-Match", tag).send(change).expect(412);
      expect(stale.body.error).toMatchObject({ code: "changed-meanwhile", fields: [] });
    }
    expect((await api.get(at)).body).toEqual(body);
    await api.put(at).set("If-Match", '"9", "1"').send(change).expect(200);
    await api.put(at).set("If-Match", "*").send(change).expect(200);
  });

  it("of two writers with the same revision: only the first is taken", async () => {
    const { api } = freshBook();
    const { body } = await api.post("/api/v1/motors").send(samples.motors);
    const put = (kv: number) =>
      api
        .put(`/api/v1/motors/${body.id}`)
        .set("If-Match", '"1"')
        .send({ ...samples.motors, kv });
    const statuses = (await Promise.all([put(1), put(2)])).map(({ status }) => status);
    expect(statuses.sort()).toEqual([200, 412]);
  });
});

describe("what points to what", () => {
  it("a build or a test with a part that there is none of: 422, each such field named, nothing stored", async () => {
    const book = freshBook();
    const parts = await addParts(book);
    const wrong = { ...parts, motor: "no-such", skirt: "none-such" };
    for (const [path, body] of [
      ["builds", sampleBuild(wrong)],
      ["tests", samplePull(wrong)],
    ] as const) {
      const { body: answer } = await book.api.post(`/api/v1/${path}`).send(body).expect(422);
      expect(answer.error.code).toBe("unknown-part");
      expect(answer.error.fields).toEqual([
        { path: "motor", message: 'Read "no-such"; allowed: the id of one of the stored motors.' },
        { path: "skirt", message: 'Read "none-such"; allowed: the id of one of the stored skirts.' },
      ]);
      expect((await book.api.get(`/api/v1/${path}`)).body.items).toEqual([]);
    }
  });

  it("a part in use: 409 that names the builds and tests; free again once they are gone", async () => {
    const book = freshBook();
    const { parts, build, pull } = await addBook(book);
    const at = `/api/v1/skirts/${parts.skirt}`;
    const { body } = await book.api.delete(at).expect(409);
    expect(body.error.code).toBe("in-use");
    expect(body.error.message).toContain('the build "Side pane crawler", the test "Pull on the pane"');
    expect(body.error.fields).toEqual([
      { path: `builds.${build.id}`, message: "Side pane crawler" },
      { path: `tests.${pull.id}`, message: "Pull on the pane" },
    ]);
    await book.api.get(at).expect(200);
    await book.api.delete(`/api/v1/builds/${build.id}`).expect(204);
    await book.api.delete(at).expect(409);
    await book.api.delete(`/api/v1/tests/${pull.id}`).expect(204);
    await book.api.delete(at).expect(204);
  });

  it("a correction that points elsewhere: frees the part it pointed to", async () => {
    const book = freshBook();
    const { parts, build, pull } = await addBook(book);
    await book.api.delete(`/api/v1/tests/${pull.id}`).expect(204);
    const other = await book.api.post("/api/v1/motors").send(samples.motors);
    const change = { ...build.data, motor: other.body.id };
    await book.api.put(`/api/v1/builds/${build.id}`).set("If-Match", '"1"').send(change).expect(200);
    await book.api.delete(`/api/v1/motors/${parts.motor}`).expect(204);
    await book.api.delete(`/api/v1/motors/${other.body.id}`).expect(409);
  });
});

describe("lists", () => {
  it("of tests, page by page while others are added and removed: each old one exactly once, newest day first", async () => {
    const book = freshBook();
    const rotor = (await book.api.post("/api/v1/rotors").send(samples.rotors)).body.id;
    const add = (day: number) =>
      book.api.post("/api/v1/tests").send(sampleCurve(rotor, { date: `2026-03-${10 + day}` }));
    const first: string[] = [];
    for (let i = 0; i < 11; i += 1) first.push((await add(i % 3)).body.id);
    const seen: { id: string; data: { date: string } }[] = [];
    let cursor: string | null = "";
    while (cursor !== null) {
      const query: object = cursor ? { limit: 3, cursor } : { limit: 3 };
      const { body } = await book.api.get("/api/v1/tests").query(query).expect(200);
      seen.push(...body.items);
      cursor = body.next;
      await add(9);
      if (seen.length === 3) await book.api.delete(`/api/v1/tests/${seen[2].id}`).expect(204);
    }
    expect(seen.map(({ id }) => id).sort()).toEqual(first.sort());
    const days = seen.map(({ data }) => data.date);
    expect(days).toEqual([...days].sort().reverse());
  });

  it.each([
    { count: 6, pages: [3, 3] },
    { count: 5, pages: [3, 2] },
    { count: 7, pages: [3, 3, 1] },
  ])(
    "of $count motors, three a page: $pages, and no empty page after a last one that is full",
    async ({ count, pages }) => {
      const book = freshBook();
      for (let i = 0; i < count; i += 1)
        await book.api.post("/api/v1/motors").send(samples.motors).expect(201);
      const sizes: number[] = [];
      let cursor: string | null = "";
      while (cursor !== null) {
        const query: object = cursor ? { limit: 3, cursor } : { limit: 3 };
        const { body } = await book.api.get("/api/v1/motors").query(query).expect(200);
        sizes.push(body.items.length);
        cursor = body.next;
      }
      expect(sizes).toEqual(pages);
    },
  );

  it("of tests, filtered: by kind, by each part, by text, and by several at once", async () => {
    const book = freshBook();
    const { parts, pull } = await addBook(book);
    const curve = (await book.api.post("/api/v1/tests").send(sampleCurve(parts.rotor))).body;
    const ids = async (query: object) => {
      const { body } = await book.api.get("/api/v1/tests").query(query).expect(200);
      return body.items.map(({ id }: { id: string }) => id);
    };
    expect(await ids({ kind: "curve" })).toEqual([curve.id]);
    expect(await ids({ rotor: parts.rotor })).toEqual([pull.id, curve.id]);
    for (const key of ["motor", "pack", "skirt", "surface"] as const) {
      expect(await ids({ [key]: parts[key] }), key).toEqual([pull.id]);
    }
    expect(await ids({ q: "BLOCKED" })).toEqual([curve.id]);
    expect(await ids({ q: "%" })).toEqual([]);
    expect(await ids({ rotor: parts.rotor, kind: "pull", q: "pane" })).toEqual([pull.id]);
    expect(await ids({ skirt: parts.skirt, kind: "curve" })).toEqual([]);
  });

  // RFC 8288: the next page's address stands in the Link header, with the same filters.
  it("with more behind a page: name the next one in the Link header, and none behind the last", async () => {
    const { api } = freshBook();
    for (const name of ["Pane 1", "Pane 2", "Roof", "Pane 3"])
      await api
        .post("/api/v1/surfaces")
        .send({ ...samples.surfaces, name })
        .expect(201);
    const first = await api.get("/api/v1/surfaces?limit=2&q=Pane").expect(200);
    const [, address] = /^<([^>]+)>; rel="next"$/.exec(first.headers.link) ?? [];
    const second = await api.get(String(address)).expect(200);
    const names = [...first.body.items, ...second.body.items].map(({ data }) => data.name);
    expect(names).toEqual(["Pane 1", "Pane 2", "Pane 3"]);
    expect(first.headers.link).toContain(encodeURIComponent(first.body.next));
    expect(second.headers).not.toHaveProperty("link");
  });

  it("of builds, by text in the name", async () => {
    const book = freshBook();
    await addBook(book);
    const found = await book.api.get("/api/v1/builds?q=pane");
    expect(found.body.items).toHaveLength(1);
    expect((await book.api.get("/api/v1/builds?q=ridge")).body.items).toEqual([]);
  });

  it.each([
    ["limit=0", "limit"],
    ["limit=many", "limit"],
    ["cursor=eA", "cursor"],
    ["kind=taste", "kind"],
    ["colour=green", "colour"],
    ["kind=pull&kind=curve", "kind"],
  ])("asked with ?%s: 400 that names %s", async (query, field) => {
    const { body } = await freshBook().api.get(`/api/v1/tests?${query}`).expect(400);
    expect(body.error.fields.map(({ path }: { path: string }) => path)).toEqual([field]);
  });
});
