/** One number of an input, or several together, known only so well. */
export interface Uncertain {
  /** from the top of the input: "skirt.gap", "rotor.psi.0" */
  readonly paths: readonly string[];
  /** uniform numbers that a sample takes: 1 for a number by itself */
  readonly dimensions: number;
  /**
   * Writes a sample into the copy that the samples share, from uniform numbers beginning at a place;
   * leaves the independent values behind it in `independent`.
   */
  readonly write: (uniforms: Float64Array, from: number, independent: Float64Array) => void;
}
