import { marginText } from "../../../../shared/decide/verdict/figures.ts";
import type { Answered } from "./answer.ts";

/** @returns the panel's answer in one sentence */
export function waysSentence({ margin, ways }: Answered, target: number, where: string): string {
  const wanted = marginText(target);
  if (margin === null) return `No pull is needed for ${where}.`;
  const stands = `${marginText(margin)} for ${where}, ${wanted} wanted`;
  if (margin >= target) return `${stands}. Each of these may go so far, all else as it stands:`;
  const doing = ways.filter(({ state }) => state === "does").length;
  if (doing === 0) return `${stands}. No setting alone works; two together may.`;
  return `${stands}. ${doing === 1 ? "One setting alone works:" : "Any one of these works alone:"}`;
}
