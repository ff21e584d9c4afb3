import { describe, expect, it } from "vitest";
import { addBook, freshBook } from "./support/api.ts";

const INCH = { length: "in", mass: "oz" };

describe("the units that a book shows", () => {
  it("in a new book: metric, so that none is named", async () => {
    const { body } = await freshBook().api.get("/api/v1/bench").expect(200);
    expect(body.units).toEqual({});
  });

  it("once chosen: are said with the book's state, and stay until others are chosen", async () => {
    const { api } = freshBook();
    const { body } = await api.put("/api/v1/bench/units").send(INCH).expect(200);
    expect(body.units).toEqual(INCH);
    expect((await api.get("/api/v1/bench")).body.units).toEqual(INCH);
    await api.put("/api/v1/bench/units").send({}).expect(200);
    expect((await api.get("/api/v1/bench")).body.units).toEqual({});
  });

  it.each([
    [{ length: "furlong" }, "length"],
    [{ length: 25.4 }, "length"],
    [{ weight: "oz" }, "weight"],
  ])("asked for as %j: refused with the field named, and nothing changed", async (units, field) => {
    const { api } = freshBook();
    await api.put("/api/v1/bench/units").send(INCH).expect(200);
    const { body } = await api.put("/api/v1/bench/units").send(units).expect(400);
    expect(JSON.stringify(body.error.fields)).toContain(field);
    expect((await api.get("/api/v1/bench")).body.units).toEqual(INCH);
  });

  it("stay when the bench is emptied: they are their user's, not the records'", async () => {
    const { api } = freshBook();
    await api.put("/api/v1/bench/units").send(INCH).expect(200);
    await api.post("/api/v1/bench/empty").expect(200);
    expect((await api.get("/api/v1/bench")).body.units).toEqual(INCH);
  });

  it("go with the archive; one of before them leaves the book's own", async () => {
    const book = freshBook();
    await addBook(book);
    await book.api.put("/api/v1/bench/units").send(INCH).expect(200);
    const { body: sent } = await book.api.get("/api/v1/archive");
    expect(sent.units).toEqual(INCH);

    const other = freshBook();
    const taken = await other.api.post("/api/v1/archive").send(sent).expect(201);
    expect(taken.body.units).toEqual(INCH);

    const third = freshBook();
    await third.api.put("/api/v1/bench/units").send({ flow: "cfm" }).expect(200);
    const { units: _, ...before } = sent;
    const old = await third.api
      .post("/api/v1/archive")
      .send({ ...before, version: 4 })
      .expect(201);
    expect(old.body.units).toEqual({ flow: "cfm" });
  });

  it("leave the API's own words metric", async () => {
    const book = freshBook();
    const { build } = await addBook(book);
    const metric = await book.api.post("/api/v1/verdict").send({ build: build.id });
    await book.api.put("/api/v1/bench/units").send(INCH).expect(200);
    const inch = await book.api.post("/api/v1/verdict").send({ build: build.id });
    expect(inch.body).toEqual(metric.body);
  });
});
