import type { Uncertainties } from "../../decide/uncertainInput.ts";

/** @returns what is uncertain but the pack: where its voltage was read, what it rests on is of no account */
export function withoutPack(asked: Uncertainties): Uncertainties {
  const own = Object.entries(asked.uncertainty).filter(([path]) => !path.startsWith("pack."));
  return { ...asked, uncertainty: Object.fromEntries(own) };
}
