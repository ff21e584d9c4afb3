/** Something a reader should know about a figure: outside a source's range, unusual, or estimated. */
export interface Note {
  readonly code: string;
  readonly message: string;
}
