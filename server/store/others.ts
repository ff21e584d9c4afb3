import type { Database, Statement } from "./database.ts";
import { isLocked } from "./patience.ts";

/**
 * Notices what another connection, of this process or of another one, committed to the file. SQLite's data_version
 * stays the same over this connection's own commits and moves with everyone else's.
 */
export class OtherWriters {
  readonly #version: Statement;
  #seen: unknown;

  constructor(database: Database) {
    this.#version = database.prepare("PRAGMA data_version").pluck();
    this.#seen = this.#version.get();
  }

  /** @returns whether anyone else wrote since the last look; false while the file is locked: the next look says it */
  haveWritten(): boolean {
    const version = this.#look();
    const moved = version !== this.#seen;
    this.#seen = version;
    return moved;
  }

  #look(): unknown {
    try {
      return this.#version.get();
    } catch (error) {
      if (isLocked(error)) return this.#seen;
      throw error;
    }
  }
}
