import { randomUUID } from "node:crypto";
import type { Foretold, KeptPrediction } from "../../shared/model/api/record.ts";
import { byCollection, type CollectionName } from "../../shared/model/collections.ts";
import type { ShownUnits } from "../../shared/units/showing.ts";
import { Agreement } from "./agreement.ts";
import { ChangeFeed } from "./changes.ts";
import { type AroundRecords, Collection } from "./collection.ts";
import { copyBeside } from "./copies.ts";
import { type Database, endWaiting, openDatabase, type Statement } from "./database.ts";
import { Deletions } from "./deletions.ts";
import { Devices } from "./devices.ts";
import { NotEmptyError } from "./errors.ts";
import { Marks } from "./marks.ts";
import { migrate } from "./migrate.ts";
import { MIGRATIONS } from "./migrations.ts";
import { OtherWriters } from "./others.ts";
import { type Debt, Owed } from "./owed.ts";
import { Predictions } from "./predictions.ts";
import { SentBefore } from "./sentBefore.ts";
import { keepUnits, unitsIn } from "./shownUnits.ts";
import type { Staged } from "./staged.ts";
import { Uses } from "./uses.ts";
import { clear, fill } from "./wholeBook.ts";

type Collections = Readonly<Record<CollectionName, Collection>>;

/** The bench book on disk. */
export class Store {
  readonly feed = new ChangeFeed();
  readonly collections: Collections;
  readonly deletions: Deletions;
  readonly predictions: Predictions;
  readonly owed: Owed;
  readonly devices: Devices;
  readonly #start = randomUUID();
  readonly #others: OtherWriters;
  readonly #marks: Marks;
  readonly #counts: Statement;

  constructor(private readonly database: Database) {
    this.#others = new OtherWriters(database);
    this.#marks = new Marks(database);
    this.#counts = database.prepare("SELECT collection, count(*) FROM records GROUP BY collection").raw();
    this.deletions = new Deletions(database);
    this.predictions = new Predictions(database);
    this.owed = new Owed(database);
    this.devices = new Devices(database);
    const around: AroundRecords = {
      uses: new Uses(database),
      agreement: new Agreement(database),
      sentBefore: new SentBefore(database),
      deletions: this.deletions,
      owed: this.owed,
      feed: this.feed,
    };
    this.collections = byCollection((name) => new Collection(name, database, around));
  }

  /** the data file */
  get file(): string {
    return this.database.name;
  }

  counts(): Readonly<Record<CollectionName, number>> {
    const counts = new Map(this.#counts.all() as [string, number][]);
    return byCollection((name) => counts.get(name) ?? 0);
  }

  isEmpty(): boolean {
    return this.database.prepare("SELECT 1 FROM records LIMIT 1").get() === undefined;
  }

  /** @returns true where the book holds the demo that came with the program */
  isDemo(): boolean {
    return this.#marks.of("demo") === "yes";
  }

  units(): ShownUnits {
    return unitsIn(this.#marks);
  }

  /** From now on the book shows each quantity in these. */
  showIn(units: ShownUnits): void {
    this.#write(() => keepUnits(this.#marks, units));
    this.#wholeBookChanged("units");
  }

  /**
   * At the very first start of a data file, and never again, puts a demo in where the book is empty. Of two servers that start at once, one does.
   *
   * @param demo - makes the demo; asked for only when it is needed, and closed
   */
  firstStart(demo: () => Staged): void {
    this.#write(() => {
      if (this.#marks.of("started") !== undefined) return;
      if (this.isEmpty()) {
        const staged = demo();
        fill(this, this.database, staged);
        staged.close();
        this.#marks.set("demo", "yes");
      }
      this.#marks.set("started", "yes");
    });
  }

  /** Tells those who follow the book that it changed, where another process wrote to the file since the last look. */
  lookForOthers(): void {
    if (this.#others.haveWritten()) this.#wholeBookChanged("elsewhere");
  }

  /** @returns another text after each write to the book, by whomever, and in each process */
  written(): string {
    this.lookForOthers();
    return `${this.#start}-${this.feed.count}`;
  }

  /** Empties the book. @returns the name of the copy that was kept */
  empty(at: Date): string {
    const copy = this.#write(() => {
      // Others can't write between the copy and what follows it: none of theirs is in neither.
      const kept = copyBeside(this.file, "before-empty", at);
      clear(this.database);
      this.#marks.set("demo", "no");
      return kept;
    });
    this.#wholeBookChanged("emptied");
    return copy;
  }

  /**
   * Puts a whole book in, all or nothing; whatever it takes the place of is kept in a copy.
   *
   * @param replace - whether a book that holds records may be replaced
   * @param before - what the copy is kept before, in its name
   * @returns the copy's name, or null where there was nothing to keep
   * @throws {NotEmptyError} on a book that holds records, unless it may be replaced
   */
  load(
    book: Staged,
    demo: boolean,
    { at, replace = false, before = "import" }: { at: Date; replace?: boolean; before?: string },
  ): string | null {
    const copy = this.#write(() => {
      if (!replace && !this.isEmpty())
        throw new NotEmptyError("Empty it first, or import with ?replace=true.");
      const kept = this.#hasPast() ? copyBeside(this.file, `before-${before}`, at) : null;
      clear(this.database);
      fill(this, this.database, book);
      if (book.units) keepUnits(this.#marks, book.units);
      this.#marks.set("demo", demo ? "yes" : "no");
      return kept;
    });
    this.#wholeBookChanged("loaded");
    return copy;
  }

  /** Keeps a prediction that is owed, unless it is owed no more; without rows it is only owed no more. */
  settle(debt: Debt, rows: readonly Foretold[] | null): void {
    this.#write(() => {
      const wasOwed = this.owed.settle(debt);
      if (wasOwed && rows) this.predictions.keep({ test: debt.test, at: debt.at, rows: [...rows] });
    });
  }

  /** Keeps what was predicted for tests afterwards, but for those that something was kept with meanwhile. */
  keepAfterwards(predictions: readonly KeptPrediction[]): void {
    this.#write(() => {
      for (const each of predictions) if (!this.predictions.of(each.test)) this.predictions.keep(each);
    });
  }

  /** Copies the database to another file while reads and writes go on. */
  async backup(file: string): Promise<void> {
    await this.database.backup(file);
  }

  close(): void {
    this.feed.close();
    this.database.close();
  }

  #hasPast(): boolean {
    return !this.isEmpty() || this.database.prepare("SELECT 1 FROM revisions LIMIT 1").get() !== undefined;
  }

  #write<T>(change: () => T): T {
    return this.database.transaction(change).immediate();
  }

  /** Tells those who follow the book what another connection of this server did to the whole of it. */
  announce(change: "emptied" | "loaded"): void {
    this.#others.haveWritten();
    this.#wholeBookChanged(change);
  }

  #wholeBookChanged(change: "emptied" | "loaded" | "units" | "elsewhere"): void {
    this.feed.publish({ collection: null, id: null, revision: null, change });
  }
}

/**
 * Opens the bench book in a file, brings its schema up to date and keeps a copy of the file before it does.
 *
 * @throws {DataFileError} on a file that holds anything but a bench book
 * @throws {NewerBookError} on a file of a later schema
 */
export function openStore(file: string, at: Date): Store {
  const database = openDatabase(file);
  try {
    migrate(database, MIGRATIONS, at);
    const store = new Store(database);
    endWaiting(database);
    return store;
  } catch (error) {
    database.close();
    throw error;
  }
}
