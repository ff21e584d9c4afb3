import { formatFixed } from "../../shared/units/format.ts";

const SMALL = [
  "no",
  "one",
  "two",
  "three",
  "four",
  "five",
  "six",
  "seven",
  "eight",
  "nine",
  "ten",
  "eleven",
  "twelve",
];

/** @returns "1 curve test", "3 curve tests" */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${formatFixed(count, 0)} ${count === 1 ? one : many}`;
}

/** @returns a small number in words, as a sentence begins or reads it; digits from 13 on */
export function inWords(count: number): string {
  return SMALL[count] ?? formatFixed(count, 0);
}
