/** Readings further apart than this are two speeds; closer ones are one speed that wandered. A judgement. */
const APART = 0.03;

/**
 * Readings grouped into the speeds that were set.
 *
 * @param speeds - any unit, one for all
 * @returns the indices of each group's readings, in the order of the readings; slowest speed first
 */
export function groupSpeeds(speeds: readonly number[]): number[][] {
  const order = speeds.map((_, i) => i).sort((a, b) => speeds[a] - speeds[b]);
  const groups: number[][] = [];
  for (const i of order) {
    const group = groups.at(-1);
    const before = group?.at(-1);
    if (group && before !== undefined && speeds[i] - speeds[before] <= APART * speeds[before]) group.push(i);
    else groups.push([i]);
  }
  return groups.map((group) => group.sort((a, b) => a - b));
}
