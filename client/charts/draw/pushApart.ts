/** A label that wants to stand at `at` and takes `size` along the line it is put on [px]. */
export interface Wanted {
  readonly at: number;
  readonly size: number;
}

/**
 * Pushes labels apart along a line so that none overlap and all stay within it, moving them as little as possible
 * in the least-squares sense (isotonic regression, pool adjacent violators).
 *
 * @param labels - in any order
 * @param from - start of the line [px]
 * @param to - end of the line [px]; where all do not fit, they run over it
 * @returns the centre of each, in the order given
 */
export function pushApart(labels: readonly Wanted[], from: number, to: number): number[] {
  const order = labels.map((_, i) => i).sort((a, b) => labels[a].at - labels[b].at || a - b);
  const offsets: number[] = [];
  let run = 0;
  for (const i of order) {
    offsets.push(run + labels[i].size / 2);
    run += labels[i].size;
  }
  const starts = pooled(order.map((i, k) => labels[i].at - offsets[k]));
  const last = Math.max(from, to - run);
  const centres = new Array<number>(labels.length);
  order.forEach((i, k) => {
    centres[i] = Math.min(last, Math.max(from, starts[k])) + offsets[k];
  });
  return centres;
}

/** The non-decreasing series nearest to the given one in least squares. */
function pooled(values: readonly number[]): number[] {
  const blocks: { sum: number; count: number }[] = [];
  for (const value of values) {
    let block = { sum: value, count: 1 };
    for (let before = blocks.at(-1); before && before.sum / before.count > block.sum / block.count; ) {
      block = { sum: before.sum + block.sum, count: before.count + block.count };
      blocks.pop();
      before = blocks.at(-1);
    }
    blocks.push(block);
  }
  return blocks.flatMap(({ sum, count }) => new Array<number>(count).fill(sum / count));
}
