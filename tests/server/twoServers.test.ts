import { join } from "node:path";
import { describe, expect, it, onTestFinished } from "vitest";
import { bookIn, closeBook } from "#server/threads/bookIn.ts";
import type { ChangeEvent } from "#shared/model/api/book.ts";
import { addBook, freshBook } from "./support/api.ts";
import { freshFolder, freshStore, steppingClock } from "./support/book.ts";
import { sampleCurve, samples } from "./support/records.ts";

/** Two servers, each with its own connection to one file. */
function twoServers() {
  const file = join(freshFolder(), "book.db");
  return [freshBook(steppingClock(), file), freshBook(steppingClock(), file)];
}

describe("two servers on one file", () => {
  it("after a write of the one, the whole book as a thread reads it: holds it, and is read anew only then", () => {
    const file = join(freshFolder(), "book.db");
    const one = freshStore(file);
    onTestFinished(closeBook);
    const read = () => bookIn(file);
    const before = read();
    expect(read()).toBe(before);
    one.collections.motors.create(samples.motors, "2026-03-01T08:00:00.000Z");
    expect(read().motors).toHaveLength(1);
    expect(read()).toBe(read());
  });

  it("after a write of the one, the other's next tests and choosings: answer from the new book", async () => {
    const [one, other] = twoServers();
    const { parts, build } = await addBook(one);
    const asked = `/api/v1/builds/${build.id}/next-tests`;
    await other.api.get(asked).expect(422);
    const points = [0, 2, 4, 6].map((flow) => ({
      speed: { value: 24000, unit: "rpm" },
      pressure: { value: 90 - flow ** 2, unit: "mmH2O" },
      flow: { value: flow, unit: "L/s" },
      torque: { value: 4 + flow / 2, unit: "mN·m" },
    }));
    await one.api
      .post("/api/v1/tests")
      .send(sampleCurve(parts.rotor, { rows: points }))
      .expect(201);
    await other.api.get(asked).expect(200);
    await one.api
      .put(`/api/v1/builds/${build.id}`)
      .set("If-Match", '"1"')
      .send({ ...build.data, name: "Lighter" });
    const list = await other.api.get("/api/v1/builds");
    expect(list.body.items[0].data.name).toBe("Lighter");
  });

  it("after a write of the one, the other's listeners: are told once to read anew, its own writes by name alone", () => {
    const file = join(freshFolder(), "book.db");
    const [one, other] = [freshStore(file), freshStore(file)];
    const told: ChangeEvent[] = [];
    other.feed.subscribe({ next: (change) => told.push(change), end: () => {} });
    const at = "2026-03-01T08:00:00.000Z";
    const { id } = other.collections.motors.create(samples.motors, at).record;
    other.lookForOthers();
    one.collections.motors.create(samples.motors, at);
    one.collections.motors.create(samples.motors, at);
    other.lookForOthers();
    other.lookForOthers();
    expect(told).toEqual([
      { collection: "motors", id, revision: 1, change: "created" },
      { collection: null, id: null, revision: null, change: "elsewhere" },
    ]);
  });
});
