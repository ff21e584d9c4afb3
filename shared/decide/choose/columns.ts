/** What is kept of each combination: eleven numbers of the solution, and two masks. All else follows from the combination's parts. */
export const STORED = [
  "speed",
  "flow",
  "pressure",
  "suction",
  "parked",
  "driving",
  "crossing",
  "windingTemperature",
  "packCurrent",
  "time",
  "keptTime",
] as const;
export type Stored = (typeof STORED)[number];

/** What follows from the stored numbers and the parts. */
export const DERIVED = ["margin", "mass", "rotorFactor", "height", "price"] as const;
export type Column = Stored | (typeof DERIVED)[number];

/** What a combination's flags say, one bit each. */
export const FLAG = {
  /** no operating point: the motor does not turn, or no point lasts */
  noPoint: 1,
  /** no answer at all: the numbers do not belong together */
  unsolved: 2,
  /** φ outside the fitted range */
  extrapolated: 4,
  /** solved by the scan of every crossing: one crossing alone is not proven for this rotor */
  scanned: 8,
  /** winding taken cold: its thermal resistance is not known */
  coldWinding: 16,
  /** the run was followed step by step: its current is too uneven for the quadrature */
  steppedRun: 32,
  /** no other combination of the same chunk dominates it in margin, mass and time */
  foremost: 64,
} as const;

/** Solved combinations from `from` up, one typed array a column over one buffer, which can be handed from thread to thread. */
export interface Chunk extends Readonly<Record<Stored, Float64Array>> {
  /** index of the first combination */
  readonly from: number;
  readonly count: number;
  readonly buffer: ArrayBufferLike;
  /** bits of {@link FLAG} */
  readonly flags: Uint16Array;
  /** bits of the limits that the combination breaks, in the order of LIMITS */
  readonly broken: Uint16Array;
}

/** Bytes that a combination takes, what keeps columns apart left aside. */
const BYTES_PER_SET = STORED.length * Float64Array.BYTES_PER_ELEMENT + 2 * Uint16Array.BYTES_PER_ELEMENT;

/** Bytes between columns. Without them, columns of 2^n combinations lie 2^m bytes apart, and all want the same few lines of the processor's cache. */
const APART = 128;
const COLUMNS = STORED.length + 2;

/** Bytes from the beginning of one column to that of the next. */
const strideOf = (count: number): number => count * Float64Array.BYTES_PER_ELEMENT + APART;

/** @returns bytes of a chunk's memory, by its combinations */
export const bytesOf = (count: number): number => count * BYTES_PER_SET + COLUMNS * APART;

/**
 * A chunk over a buffer.
 *
 *     columns of 8 bytes first, then the two masks, a little apart
 *
 * @param from - index of the first combination [-]
 * @param count - combinations [-]
 * @param buffer - memory, of {@link bytesOf} bytes; new unless given
 * @returns views on it, SI
 *
 * Valid for any chunk; a chunk that came from another thread is rebuilt from its buffer
 */
export function chunkOver(
  from: number,
  count: number,
  buffer: ArrayBufferLike = new ArrayBuffer(bytesOf(count)),
): Chunk {
  const column = (name: Stored) => new Float64Array(buffer, STORED.indexOf(name) * strideOf(count), count);
  const masks = STORED.length * strideOf(count);
  return {
    from,
    count,
    buffer,
    speed: column("speed"),
    flow: column("flow"),
    pressure: column("pressure"),
    suction: column("suction"),
    parked: column("parked"),
    driving: column("driving"),
    crossing: column("crossing"),
    windingTemperature: column("windingTemperature"),
    packCurrent: column("packCurrent"),
    time: column("time"),
    keptTime: column("keptTime"),
    flags: new Uint16Array(buffer, masks, count),
    broken: new Uint16Array(buffer, masks + count * Uint16Array.BYTES_PER_ELEMENT + APART, count),
  };
}
