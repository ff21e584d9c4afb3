import type { TriedPack } from "../../decide/choose/problem.ts";
import { findById } from "../book.ts";
import { packInAir } from "../coldPack.ts";
import { stackedBy } from "../fitUp/stackedBy.ts";
import { packBasis } from "../packBasis.ts";
import { type Context, tried } from "./context.ts";

function packOf({ book, build, housing }: Context, id: string): readonly TriedPack[] | string {
  const record = findById(book.packs, id);
  const basis = packBasis(book, id);
  if (!record || !basis) return `The book has no pack ${id}.`;
  if (basis.basis === "missing") return basis.missing.message;
  const { cell } = packInAir(basis, build.air.temperature);
  const { name, mass, height, price, series, parallel, wireResistance } = record.data;
  if (mass === undefined) return `${name} has no mass: weigh it, on the pack's page.`;
  const stacked = stackedBy(build, "pack", { ...housing, pack: record.data });
  return [{ id, mass, height, price, stacked, series, parallel, wireResistance, cell }];
}

/** @returns the packs to try, by their discharge tests where there are any */
export function triedPacks(context: Context, ids: readonly string[]): TriedPack[] {
  return tried(context, "packs", ids, (id) => packOf(context, id));
}
