import type { Device } from "../../shared/model/api/devices.ts";
import type { Database, Statement } from "./database.ts";
import { diskTroubleOf } from "./diskTrouble.ts";
import { newId } from "./ids.ts";
import { isLocked } from "./patience.ts";

/** A device is noted as seen at most this often [ms]: each note is a write. */
const SEEN_EVERY = 5 * 60_000;

interface Row {
  readonly id: string;
  readonly name: string;
  readonly paired_at: string;
  readonly seen_at: string;
}

const deviceOf = ({ id, name, paired_at, seen_at }: Row): Device => ({
  id,
  name,
  pairedAt: paired_at,
  seenAt: seen_at,
});

/** The devices that were paired, and not revoked since. */
export class Devices {
  readonly #list: Statement;
  readonly #find: Statement;
  readonly #isTaken: Statement;
  readonly #add: Statement;
  readonly #see: Statement;
  readonly #remove: Statement;

  constructor(private readonly database: Database) {
    this.#list = database.prepare("SELECT * FROM devices ORDER BY paired_at, id");
    this.#find = database.prepare("SELECT * FROM devices WHERE secret = ?");
    this.#isTaken = database.prepare("SELECT 1 FROM devices WHERE name = ?");
    this.#add = database.prepare(
      "INSERT INTO devices (id, name, secret, paired_at, seen_at) VALUES (?, ?, ?, ?, ?)",
    );
    this.#see = database.prepare("UPDATE devices SET seen_at = ? WHERE id = ?");
    this.#remove = database.prepare("DELETE FROM devices WHERE id = ?");
  }

  /** @returns all of them, in the order in which they were paired */
  list(): Device[] {
    return (this.#list.all() as Row[]).map(deviceOf);
  }

  /**
   * @param name - another's name gets a number behind it
   * @param secret - the hash of what the device will show
   */
  add(name: string, secret: string, at: Date): Device {
    const add = this.database.transaction(() => {
      const free = this.#freeName(name);
      const id = newId(free);
      this.#add.run(id, free, secret, at.toISOString(), at.toISOString());
      return { id, name: free, pairedAt: at.toISOString(), seenAt: at.toISOString() };
    });
    return add.immediate();
  }

  /** @returns the device of a secret, by its hash, noted as seen; null where none has it */
  seen(secret: string, at: Date): Device | null {
    const row = this.#find.get(secret) as Row | undefined;
    if (!row) return null;
    if (Math.abs(at.getTime() - Date.parse(row.seen_at)) >= SEEN_EVERY) this.#note(row.id, at);
    return deviceOf(row);
  }

  /** @returns false where there is no such device */
  revoke(id: string): boolean {
    return this.#remove.run(id).changes > 0;
  }

  #freeName(name: string): string {
    for (let number = 1; ; number += 1) {
      const free = number === 1 ? name : `${name} ${number}`;
      if (this.#isTaken.get(free) === undefined) return free;
    }
  }

  /** Another program that holds the file for a moment is no reason to refuse a device; a file that can't be written says so where something is written. */
  #note(id: string, at: Date): void {
    try {
      this.#see.run(at.toISOString(), id);
    } catch (error) {
      if (!(isLocked(error) || diskTroubleOf(error))) throw error;
    }
  }
}
