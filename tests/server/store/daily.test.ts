import { readdirSync, utimesSync, writeFileSync } from "node:fs";
import { dirname } from "node:path";
import SQLite from "better-sqlite3";
import { describe, expect, it } from "vitest";
import { copyDaily } from "#server/store/daily.ts";
import { freshStore } from "#tests/server/support/book.ts";
import { samples } from "#tests/server/support/records.ts";

const DAY = 86_400_000;
const START = Date.parse("2026-03-01T08:00:00Z");
const day = (number: number) => new Date(START + number * DAY);

const copiesOf = (file: string): string[] =>
  readdirSync(dirname(file))
    .filter((name) => name.endsWith(".bak"))
    .sort();

describe("the daily copy of a book", () => {
  it("is made once a day, and holds the book of its moment", () => {
    const store = freshStore();
    const { file } = store;
    store.collections.motors.create(samples.motors, day(0).toISOString());
    expect(copyDaily({ file, at: day(0), keep: 7 })).toBe("book.db.20260301T080000Z-daily.bak");
    expect(copyDaily({ file, at: day(0.5), keep: 7 })).toBeNull();
    expect(copyDaily({ file, at: day(1), keep: 7 })).toBe("book.db.20260302T080000Z-daily.bak");
    const copy = new SQLite(`${dirname(file)}/${copiesOf(file)[0]}`, { readonly: true });
    expect(copy.prepare("SELECT count(*) FROM records").pluck().get()).toBe(1);
    copy.close();
  });

  it("beyond those that are kept: the oldest goes; copies of another reason stay", () => {
    const store = freshStore();
    const { file } = store;
    const emptied = store.empty(day(-30));
    for (let i = 0; i < 12; i++) copyDaily({ file, at: day(i), keep: 3 });
    expect(copiesOf(file)).toEqual([
      emptied,
      ...["10", "11", "12"].map((date) => `book.db.202603${date}T080000Z-daily.bak`),
    ]);
  });

  it("with none to be kept: isn't made", () => {
    const { file } = freshStore();
    expect(copyDaily({ file, at: day(0), keep: 0 })).toBeNull();
    expect(copiesOf(file)).toEqual([]);
  });

  it("after the clock was set back by a year: is made, and isn't the one that goes", () => {
    const { file } = freshStore();
    for (let i = 0; i < 3; i++) copyDaily({ file, at: day(i), keep: 3 });
    const made = copyDaily({ file, at: day(-365), keep: 3 });
    expect(made).toBe("book.db.20250301T080000Z-daily.bak");
    expect(copiesOf(file)).toContain(made);
    expect(copiesOf(file)).toHaveLength(3);
  });

  it("that was broken off by a kill: is never listed as one, and goes a day later", () => {
    const { file } = freshStore();
    const half = `${file}.20260228T080000Z-daily.4711.part`;
    writeFileSync(half, "half a copy");
    utimesSync(half, day(-0.5), day(-0.5));
    copyDaily({ file, at: day(0), keep: 7 });
    expect(readdirSync(dirname(file))).toContain("book.db.20260228T080000Z-daily.4711.part");
    copyDaily({ file, at: day(1), keep: 7 });
    expect(readdirSync(dirname(file)).filter((name) => name.includes(".part"))).toEqual([]);
    expect(copiesOf(file)).toHaveLength(2);
  });
});
