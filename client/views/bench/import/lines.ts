/** One line of a file that is no blank one. */
export interface CsvLine {
  /** as an editor counts them, the first is 1 */
  readonly line: number;
  readonly cells: readonly string[];
}

/** Cells of a line and lines of a block, in what is kept: no text file has these characters. */
const BETWEEN_CELLS = "\u001f";

interface Block {
  /** index of its first line among all */
  readonly first: number;
  readonly text: string;
  /** where each of its lines ends in the text */
  readonly ends: Uint32Array;
  /** the number of each of its lines in the file */
  readonly numbers: Uint32Array;
}

/**
 * The lines of a file, a million of them in little more room than its text takes. A line's cells are taken apart when they
 * are asked for.
 */
export class Lines {
  constructor(
    private readonly blocks: readonly Block[],
    private readonly from: number,
    readonly length: number,
  ) {}

  /** @returns the line at a place, from 0 */
  at(place: number): CsvLine {
    const index = place + this.from;
    const block = this.blockOf(index);
    const i = index - block.first;
    const text = block.text.slice(i === 0 ? 0 : block.ends[i - 1], block.ends[i]);
    return { line: block.numbers[i], cells: text.split(BETWEEN_CELLS) };
  }

  /** @returns some lines of the beginning */
  first(count: number): CsvLine[] {
    return Array.from({ length: Math.min(count, this.length) }, (_, i) => this.at(i));
  }

  /** @returns the lines from a place on */
  after(place: number): Lines {
    return new Lines(this.blocks, this.from + place, Math.max(0, this.length - place));
  }

  *[Symbol.iterator](): Iterator<CsvLine> {
    for (let i = 0; i < this.length; i++) yield this.at(i);
  }

  private blockOf(index: number): Block {
    let [low, high] = [0, this.blocks.length - 1];
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (this.blocks[middle].first <= index) low = middle;
      else high = middle - 1;
    }
    return this.blocks[low];
  }
}

/** Takes lines in, block by block. */
export class LinesBuilder {
  private readonly blocks: Block[] = [];
  private count = 0;

  /** Keeps the lines of one piece of a file, blank ones left out. */
  add(lines: readonly CsvLine[]): void {
    if (lines.length === 0) return;
    const ends = new Uint32Array(lines.length);
    const numbers = new Uint32Array(lines.length);
    const texts = lines.map(({ line, cells }, i) => {
      const text = cells.join(BETWEEN_CELLS);
      ends[i] = (i === 0 ? 0 : ends[i - 1]) + text.length;
      numbers[i] = line;
      return text;
    });
    this.blocks.push({ first: this.count, text: texts.join(""), ends, numbers });
    this.count += lines.length;
  }

  done(): Lines {
    return new Lines(this.blocks, 0, this.count);
  }
}
