/** Of a drawing [px]. */
export interface ChartSize {
  readonly width: number;
  readonly height: number;
}
