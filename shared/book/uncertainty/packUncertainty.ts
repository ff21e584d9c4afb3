import { chargeVoltage, resistanceByVoltage } from "../../decide/chargeVoltage.ts";
import type { Build } from "../../model/build.ts";
import type { Pack } from "../../model/parts/pack.ts";
import type { PackBasis } from "../packBasis.ts";
import type { Collector } from "./collector.ts";

/** How well a state of charge is known of which nothing is stated [-]. Common practice, no source: docs/method/uncertainty.md, What a build of the book is unsure of. */
export const CHARGE_UNCERTAINTY = 0.03;

/** How well R is known at a charge: by the stretch of it that lies nearest, or as a whole [Ω]; null where it isn't from tests. */
function resistanceError({ fit }: PackBasis, charge: number): number | null {
  const far = (at: { readonly charge: number }) => Math.abs(at.charge - charge);
  const [nearest] = [...(fit?.resistanceByCharge ?? [])].sort((a, b) => far(a) - far(b));
  return nearest?.standardError ?? fit?.resistanceError ?? null;
}

/** Resistances of cells and wire, and voltage and resistance by the charge's uncertainty. */
export function addPackUncertainty(pack: Pack, basis: PackBasis, build: Build, into: Collector): void {
  const { name, uncertainty } = pack;
  const stated = (what: string) => ({ from: "stated", what: `${what} of ${name}`, test: null }) as const;
  const fit = { from: "fit", what: `discharge tests of ${name}`, test: "discharge" } as const;
  const { rise, cell: inUse } = basis;
  into.add("pack.cellResistance", rise * (resistanceError(basis, build.charge) ?? 0), fit);
  const cell = rise * (uncertainty["cell.resistance"] ?? uncertainty.cellResistance ?? 0);
  if (basis.basis !== "measured")
    into.add("pack.cellResistance", cell, { ...stated("cell resistance"), test: "discharge" });
  into.add("pack.wireResistance", uncertainty.wireResistance, stated("wire resistance"));
  const { charge = CHARGE_UNCERTAINTY } = build.uncertainty;
  const isStated = build.uncertainty.charge !== undefined;
  into.add(
    "pack.openCircuitVoltage",
    chargeVoltage(inUse.curve, build.charge, charge),
    isStated
      ? stated("state of charge")
      : { from: "default", what: `state of charge of ${name}, ±\u202f3\u202f%`, test: null },
  );
  into.addFollower("pack.cellResistance", {
    "pack.openCircuitVoltage": resistanceByVoltage(inUse, build.charge, charge),
  });
}
