/** @returns "1 curve test", "3 curve tests" */
export function count(n: number, what: string): string {
  return `${n} ${what}${n === 1 ? "" : "s"}`;
}
