import { formatFixed } from "../../../shared/units/format.ts";

/** @returns "a", "a and b", "a, b and c" */
export function listed(words: readonly string[]): string {
  if (words.length < 2) return words.join("");
  return `${words.slice(0, -1).join(", ")} and ${words[words.length - 1]}`;
}

/** @returns a share as percent with two digits, "1.4 %", "0.32 %", "14 %", with a space at which no line breaks */
export function percent(share: number, digits = 2): string {
  if (!Number.isFinite(share)) return "–";
  const value = Math.abs(share * 100);
  const decimals = value === 0 ? 0 : Math.min(3, Math.max(0, digits - 1 - Math.floor(Math.log10(value))));
  return `${formatFixed(share * 100, decimals)}\u202f%`;
}

/** @returns an amount in percent with its direction in words: "2.1 % high", "0.4 % low" */
export function offBy(share: number): string {
  return `${percent(Math.abs(share))} ${share >= 0 ? "high" : "low"}`;
}

/** @returns the text with a capital at its start */
export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
