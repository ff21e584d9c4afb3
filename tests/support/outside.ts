import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";

/** How far figures lie off what someone else measured. */
export interface Outside {
  /** what is predicted from what: one line of docs/accuracy.md */
  readonly what: string;
  /** who measured it */
  readonly source: string;
  readonly unit: "%" | "mV";
  /** prediction less measurement, in that unit, one a reading */
  readonly errors: readonly number[];
}

/**
 * Hands on errors against an outside measurement to docs/accuracy.md, where `npm run coverage` asks for them; else does nothing.
 *
 * @param name - under which they are kept, one file each
 * @param found - errors as the test found them, unselected
 */
export function heldAgainst(name: string, found: Outside): void {
  const folder = process.env.GRIPCURVE_OUTSIDE;
  if (!folder) return;
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, `${name}.json`), JSON.stringify(found));
}
