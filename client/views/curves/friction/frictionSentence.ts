import { formatFixed } from "../../../../shared/units/format.ts";
import { counted } from "../../../ui/count.ts";
import type { FrictionGroup } from "./frictionData.ts";

const DECIMALS = 2;

/** @returns μ with its standard uncertainty, "0.74 ± 0.03" */
export function muText({ mu, uncertainty }: { mu: number; uncertainty: number | null }): string {
  if (uncertainty === null) return formatFixed(mu, DECIMALS);
  return `${formatFixed(mu, DECIMALS)} ± ${formatFixed(uncertainty, uncertainty < 0.01 ? 3 : DECIMALS)}`;
}

/** @returns what the slides of a contact say, one sentence */
export function frictionSentence(group: FrictionGroup, surface: string): string {
  const used = group.slides.filter((slide) => slide.aside === null).length;
  const who = group.key === "wheels" ? "Wheels hold" : `${group.title} holds`;
  if (!group.fit)
    return `How ${group.key === "wheels" ? "wheels hold" : `${group.title} holds`} on ${surface} is not settled yet.`;
  return `${who} on ${surface} with μ = ${muText(group.fit)}, from ${counted(used, "slide")}.`;
}
