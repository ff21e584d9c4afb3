import { TOGETHER } from "../../decide/spread.ts";
import type { Share } from "../../decide/uncertainty.ts";
import type { BuildUncertainty, UncertaintySource } from "./collector.ts";

/** A part of the uncertainty of a build: all that one source leaves open. */
export interface UncertaintyPart {
  readonly key: string;
  readonly what: string;
  /** of the variance of the worst driving margin [-] */
  readonly share: number;
  readonly source: UncertaintySource;
  /** of the numbers that it is about */
  readonly paths: readonly string[];
}

/** @returns every part of the uncertainty, largest first, those of one source together */
export function uncertaintyParts(
  shares: readonly Share[],
  sources: BuildUncertainty["sources"],
): UncertaintyPart[] {
  const parts = new Map<string, UncertaintyPart>();
  for (const { path, share } of shares) {
    const paths = path.split(TOGETHER);
    const source = sources[paths[0]];
    if (!source) continue;
    const { what } = source;
    const known = parts.get(what);
    parts.set(what, {
      key: what,
      what,
      share: (known?.share ?? 0) + share,
      source,
      paths: [...(known?.paths ?? []), ...paths],
    });
  }
  return [...parts.values()].sort((a, b) => b.share - a.share);
}

/** @returns the title of the working of a part: "share of the uncertainty: tilt tests of …" */
export const shareTitle = (what: string): string => `share of the uncertainty: ${what}`;
