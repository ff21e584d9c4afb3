import { readJson } from "../json.ts";
import { Refusal } from "../refusal.ts";

/** Of one entry of a list: no record that is sent by itself is as large [byte]. */
const LARGEST_ENTRY = 4_000_000;
/** Beyond this no key is known [byte]. */
const LONGEST_KEY = 200;
/** Of all that lies outside the lists [byte]. */
const LARGEST_FRAME = 100_000;

const code = (letter: string): number => letter.charCodeAt(0);
const [QUOTE, BACKSLASH, COMMA, COLON] = ['"', "\\", ",", ":"].map(code);
const [LIST, LIST_END, OBJECT, OBJECT_END] = ["[", "]", "{", "}"].map(code);
const BLANKS = new Set([" ", "\n", "\r", "\t"].map(code));

const malformed = (message: string): Refusal => new Refusal(400, "malformed", message);

/** Bytes that belong together, as they come in. */
class Gathered {
  #parts: Uint8Array[] = [];
  #length = 0;

  constructor(
    private readonly most: number,
    private readonly words: string,
  ) {}

  add(part: Uint8Array): void {
    this.#length += part.length;
    if (this.#length > this.most) throw malformed(this.words);
    if (part.length > 0) this.#parts.push(part);
  }

  take(): Uint8Array {
    const whole = this.#parts.length === 1 ? this.#parts[0] : Buffer.concat(this.#parts);
    this.#parts = [];
    this.#length = 0;
    return whole;
  }
}

export interface Lists {
  /** whether the entries of the list at a path are to be taken one by one */
  readonly isList: (path: string) => boolean;
  readonly take: (path: string, entry: unknown) => void;
}

/**
 * Reads a JSON document of any length piece by piece: the entries of its long lists go out one by one, what lies around
 * them stays. No more than one entry lies in memory.
 */
export class ArchiveScan {
  readonly #frame = new Gathered(LARGEST_FRAME, "The body holds too much outside its lists of records.");
  readonly #entry = new Gathered(LARGEST_ENTRY, `A record is too large; allowed: ${LARGEST_ENTRY} bytes.`);
  /** of the frame */
  #depth = 0;
  readonly #keys: string[] = [];
  /** the text that is read, or was read last, in the frame */
  #text: number[] = [];
  #inText = false;
  #isEscaped = false;
  /** path of the list whose entries are read; null in the frame */
  #list: string | null = null;
  #entries = 0;
  /** of the entry */
  #inner = 0;

  constructor(private readonly lists: Lists) {}

  /** @param chunk - may be used for something else afterwards */
  push(chunk: Uint8Array): void {
    let from = 0;
    for (let i = 0; i < chunk.length; i++) {
      const byte = chunk[i];
      if (this.#inText) this.#inside(byte);
      else if (byte === QUOTE) {
        this.#inText = true;
        this.#text = [];
      } else if (this.#list === null) {
        if (!this.#around(byte)) continue;
        this.#frame.add(Uint8Array.prototype.slice.call(chunk, from, i + 1));
        from = i + 1;
      } else if (this.#ends(byte)) {
        this.#entry.add(chunk.subarray(from, i));
        this.#give(byte);
        from = this.#list === null ? i : i + 1;
      }
    }
    const rest = Uint8Array.prototype.slice.call(chunk, from);
    if (this.#list === null) this.#frame.add(rest);
    else this.#entry.add(rest);
  }

  /** @returns the document with its long lists empty; undefined where there was nothing @throws {Refusal} 400 on what is no JSON */
  end(): unknown {
    const bytes = this.#frame.take();
    if (this.#list !== null) throw malformed("The body is no JSON: it ends within a list.");
    return readJson(bytes);
  }

  #inside(byte: number): void {
    if (this.#isEscaped) this.#isEscaped = false;
    else if (byte === BACKSLASH) this.#isEscaped = true;
    else if (byte === QUOTE) this.#inText = false;
    if (this.#inText && this.#list === null && this.#text.length < LONGEST_KEY) this.#text.push(byte);
  }

  /** In the frame. @returns whether the entries of a list begin behind it */
  #around(byte: number): boolean {
    if (byte === COLON) this.#keys[this.#depth - 1] = this.#key();
    else if (byte === OBJECT_END || byte === LIST_END) this.#depth -= 1;
    else if (byte === OBJECT || byte === LIST) {
      const path = this.#keys.slice(0, this.#depth).join(".");
      if (byte === LIST && this.lists.isList(path)) {
        this.#list = path;
        this.#entries = 0;
        return true;
      }
      this.#depth += 1;
    }
    return false;
  }

  #key(): string {
    return String(readJson(Buffer.from([QUOTE, ...this.#text, QUOTE])));
  }

  /** In a list. @returns whether an entry ends before it */
  #ends(byte: number): boolean {
    if (this.#inner === 0 && (byte === COMMA || byte === LIST_END)) return true;
    if (byte === OBJECT || byte === LIST) this.#inner += 1;
    else if (byte === OBJECT_END || byte === LIST_END) this.#inner -= 1;
    return false;
  }

  #give(byte: number): void {
    const path = this.#list ?? "";
    const bytes = this.#entry.take();
    const isLast = byte === LIST_END;
    if (isLast) this.#list = null;
    if (isLast && this.#entries === 0 && bytes.every((each) => BLANKS.has(each))) return;
    if (bytes.length === 0) throw malformed(`The body is no JSON: ${path} has a comma too many.`);
    this.#entries += 1;
    this.lists.take(path, readJson(bytes));
  }
}
