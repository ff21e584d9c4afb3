import { spawn } from "node:child_process";
import { once } from "node:events";
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { gunzipSync } from "node:zlib";
import { MIGRATIONS } from "#server/store/migrations.ts";
import { type Acknowledged, inSound, notIn } from "./acknowledged.ts";
import { changeUntilGone, isOfWhole, type Moment } from "./moments.ts";
import { startServer } from "./server.ts";
import { add, type Unanswered, type Written, writeUntilGone } from "./writers.ts";

const WRITERS = 6;
/** A kill comes after so many acknowledged writes and changes of the whole at most, or after so long [ms], and then at any moment of the next [ms]. */
const [MOST_WRITES, MOST_CHANGES, LATEST, MOMENT] = [60, 3, 15_000, 300];
const BOOKS = new URL("../../fixtures/books/", import.meta.url).pathname;

/** What a server has done since it began. */
interface Done {
  readonly writes: () => number;
  readonly changes: () => number;
}

async function anyMoment({ writes, changes }: Done, ofWhole: boolean): Promise<void> {
  const wantedWrites = Math.random() * MOST_WRITES;
  const wantedChanges = ofWhole ? Math.floor(Math.random() * MOST_CHANGES) : 0;
  const end = performance.now() + LATEST;
  while ((writes() < wantedWrites || changes() < wantedChanges) && performance.now() < end) await pause(1);
  await pause(Math.random() * MOMENT);
}

/** A book that outlives kill after kill, and everything that was ever acknowledged of it. */
export class KilledBook {
  readonly file: string;
  acknowledged = 0;
  /** of the whole book that ended before a kill */
  changes = 0;
  /** that the book itself must hold; what went into a copy stays there */
  #pending: Acknowledged[] = [];
  #unanswered: Unanswered[] = [];
  #checkedCopies = new Set<string>();

  constructor(
    private readonly folder: string,
    private readonly main: string,
  ) {
    this.file = join(folder, "book.db");
  }

  get copies(): number {
    return this.#checkedCopies.size;
  }

  /** Starts the server, lets it write, kills it in the middle, and holds the file and its copies against what it said. @returns acknowledged writes that are nowhere */
  async kill(moment: Moment): Promise<Acknowledged[]> {
    const server = await startServer(this.main, this.file);
    await this.#sendAgain(server.url);
    const written: Written = { acknowledged: [], unanswered: [] };
    const lanes = Array.from({ length: WRITERS }, () => writeUntilGone(server.url, written));
    let changes = 0;
    const whole = changeUntilGone(moment, server.url, this.folder, () => {
      changes += 1;
    });
    const done = { writes: () => written.acknowledged.length, changes: () => changes };
    await anyMoment(done, isOfWhole(moment));
    this.changes += changes;
    server.child.kill("SIGKILL");
    await Promise.all([...lanes, whole, server.ended]);
    this.acknowledged += written.acknowledged.length;
    this.#pending.push(...written.acknowledged);
    // Replacing the book forgets the keys with it.
    this.#unanswered = moment === "writes" || moment === "backup" ? written.unanswered : [];
    return this.#lost();
  }

  /** What had no answer goes out again under its key: it is in the book once, whether it was stored then or not. */
  async #sendAgain(url: string): Promise<void> {
    for (const sent of this.#unanswered) {
      const added = await add(url, sent);
      const found = await fetch(`${url}/api/v1/surfaces?q=${encodeURIComponent(sent.body.name)}`);
      const { items } = (await found.json()) as { items: unknown[] };
      if (!added || items.length > 1) throw new Error(`${sent.body.name} stands ${items.length} times`);
    }
    this.#unanswered = [];
  }

  #lost(): Acknowledged[] {
    const replaced = notIn(this.file, this.#pending);
    const gone = new Set(replaced);
    this.#pending = this.#pending.filter((write) => !gone.has(write));
    let missing = replaced;
    for (const name of readdirSync(this.folder)) {
      if (!name.endsWith(".bak") || this.#checkedCopies.has(name)) continue;
      missing = notIn(join(this.folder, name), missing);
      this.#checkedCopies.add(name);
    }
    return missing;
  }
}

const rowsIn = (file: string) =>
  inSound(file, (database) => ({
    schema: database.pragma("user_version", { simple: true }) as number,
    states: database.prepare("SELECT count(*) FROM revisions").pluck().get() as number,
    tests: database
      .prepare(
        (database.pragma("user_version", { simple: true }) as number) < 5
          ? "SELECT count(*) FROM tests"
          : "SELECT count(*) FROM records WHERE collection = 'tests'",
      )
      .pluck()
      .get() as number,
  }));

/** Kills a server while it brings a book of an earlier schema forward. @returns what is wrong; null where nothing is */
export async function killedMigration(main: string): Promise<string | null> {
  const names = readdirSync(BOOKS).filter((name) => name.endsWith(".gz"));
  const folder = mkdtempSync(join(tmpdir(), "gripcurve-kill-"));
  const file = join(folder, "book.db");
  try {
    const bytes = gunzipSync(readFileSync(join(BOOKS, names[Math.floor(Math.random() * names.length)])));
    writeFileSync(file, bytes);
    const before = rowsIn(file);
    const env = { ...process.env, PORT: "0", HOST: "127.0.0.1", GRIPCURVE_DB: file };
    const child = spawn(process.execPath, [main], { env, stdio: "ignore" });
    const ended = once(child, "exit");
    // The copy, the log or the latest schema: whatever of the start shows first, then any moment.
    const end = performance.now() + 60_000;
    while (readdirSync(folder).length < 2 && performance.now() < end) await pause(1);
    await pause(Math.random() * 60);
    child.kill("SIGKILL");
    await ended;
    const after = rowsIn(file);
    const latest = MIGRATIONS.length;
    if (after.schema !== before.schema && after.schema !== latest)
      return `schema ${after.schema} is neither old nor new`;
    if (after.tests !== before.tests || after.states !== before.states) return "records are missing";
    for (const name of readdirSync(folder).filter((each) => each.endsWith(".bak")))
      if (rowsIn(join(folder, name)).tests !== before.tests) return `${name} is not whole`;
    const again = await startServer(main, file);
    again.child.kill("SIGTERM");
    await again.ended;
    const done = rowsIn(file);
    return done.schema === latest && done.tests === before.tests ? null : "it can't be opened again";
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
