/**
 * Keeps every n-th of what comes in, so many at most: where there are more, every second one is dropped and n doubles.
 * What is kept is a plain part of what was read, nothing is averaged.
 */
export class Thinned<T> {
  private kept: T[] = [];
  private count = 0;
  private stride: number;

  /**
   * @param most - so many are kept at most
   * @param every - n to begin with, 1 or more
   */
  constructor(
    private readonly most: number,
    every: number,
  ) {
    this.stride = every;
  }

  /** Counts one in; makes and keeps it where its turn has come. */
  add(make: () => T): void {
    const isItsTurn = this.count % this.stride === 0;
    this.count++;
    if (!isItsTurn) return;
    this.kept.push(make());
    if (this.kept.length <= this.most) return;
    this.kept = this.kept.filter((_, i) => i % 2 === 0);
    this.stride *= 2;
  }

  done(): { readonly kept: readonly T[]; readonly of: number; readonly every: number } {
    return { kept: this.kept, of: this.count, every: this.stride };
  }
}
