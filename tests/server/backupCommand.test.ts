import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import SQLite from "better-sqlite3";
import { describe, expect, it } from "vitest";
import { backupCommand } from "#server/backupCommand.ts";
import { configFrom } from "#server/config.ts";
import { freshFolder, freshStore } from "./support/book.ts";
import { samples } from "./support/records.ts";

/** Runs the command on a data file. @returns its exit code and what it said */
function run(file: string, ...args: string[]) {
  let [out, complaint] = ["", ""];
  const code = backupCommand(args, {
    config: () => configFrom({ GRIPCURVE_DB: file }),
    clock: () => new Date("2026-03-01T08:00:00Z"),
    out: (text) => (out += text),
    complain: (text) => (complaint += text),
  });
  return { code, out, complaint };
}

const motorsIn = (copy: string): unknown => {
  const database = new SQLite(copy, { readonly: true });
  const count = database.prepare("SELECT count(*) FROM records WHERE collection = 'motors'").pluck().get();
  database.close();
  return count;
};

describe("npm run backup, while a server has the book open and writes", () => {
  it("without a name: puts a whole copy beside the data file, and says where", () => {
    const store = freshStore();
    store.collections.motors.create(samples.motors, "2026-03-01T08:00:00.000Z");
    const { code, out } = run(store.file);
    const copy = join(dirname(store.file), "book.db.20260301T080000Z-by-hand.bak");
    expect({ code, out }).toEqual({ code: 0, out: `${copy} (${readFileSync(copy).length} bytes)\n` });
    store.collections.motors.create(samples.motors, "2026-03-01T08:00:01.000Z");
    expect(motorsIn(copy)).toBe(1);
    expect(store.counts().motors).toBe(2);
  });

  it("with a name: puts it there, and never over what is there", () => {
    const { file } = freshStore();
    const target = join(freshFolder(), "elsewhere.db");
    expect(run(file, target).code).toBe(0);
    expect(motorsIn(target)).toBe(0);
    const before = readFileSync(target);
    const again = run(file, target);
    expect(again).toMatchObject({ code: 1, out: "" });
    expect(again.complaint).toBe(`${target} is there already. Name a new file; nothing is overwritten.\n`);
    expect(readFileSync(target).equals(before)).toBe(true);
    expect(readdirSync(dirname(target))).toEqual(["elsewhere.db"]);
  });
});

describe("npm run backup, where there is nothing to copy", () => {
  it("no data file: names it, and makes none", () => {
    const file = join(freshFolder(), "none.db");
    expect(run(file)).toMatchObject({
      code: 1,
      complaint: `There is no data file ${file}. Name yours with GRIPCURVE_DB.\n`,
    });
    expect(existsSync(file)).toBe(false);
  });

  it("another program's file: refuses in words", () => {
    const file = join(freshFolder(), "notes.db");
    writeFileSync(file, "a list of parts\n".repeat(20));
    expect(run(file)).toMatchObject({ code: 1, complaint: expect.stringMatching(/is no SQLite database/) });
  });

  it.each([[["a", "b"]], [["--help"]]])("with the arguments %j: says how it is used", (args) => {
    expect(run(join(freshFolder(), "book.db"), ...args)).toMatchObject({
      code: 2,
      complaint: expect.stringMatching(/^Usage: npm run backup/),
    });
  });
});
