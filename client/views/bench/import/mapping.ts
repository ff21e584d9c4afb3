import type { TestKind } from "../../../../shared/model/tests/index.ts";
import { unitOf } from "../../../../shared/units/showing.ts";
import { unitLabels } from "../record/numbers.ts";
import { isNominal, roleOf, strangeUnit, unitIn } from "./headers.ts";
import { IGNORE, OPEN, type Role, roleDimension, rolesOf } from "./roles.ts";

export interface ColumnMapping {
  readonly role: Role;
  /** the unit meant where a cell carries none; empty where the role has none, or where it isn't known yet */
  readonly unit: string;
  /** factor on its readings, as typed: "-1", "1/7"; none unless given */
  readonly times?: string;
  /** taken off its readings before, in the same unit, as typed; "first": what the first of each test was */
  readonly minus?: string;
}

/** @returns the mapping of a column that takes a role: its unit read from the header, the quantity's first where it names none, to be chosen where it names a strange one */
export function mappingFor(role: Role, header: string, kind: TestKind = "curve"): ColumnMapping {
  const name = roleDimension(kind, role);
  if (name === null) return { role, unit: "" };
  if (strangeUnit(header, name) !== null) return { role, unit: "" };
  return { role, unit: unitIn(header, name) ?? unitOf(name) };
}

/** Guesses what each column is from its header; of two for one role the first that was read counts before one that was set, the other is left out. */
export function guessMapping(header: readonly string[], kind: TestKind = "curve"): ColumnMapping[] {
  const known = rolesOf(kind);
  const roles = header
    .map((name) => roleOf(name, kind))
    .map((role) => (known.includes(role) ? role : IGNORE));
  const places = roles.map((_, i) => i);
  return header.map((name, at) => {
    const role = roles[at];
    if (role === OPEN || role === IGNORE) return mappingFor(role, name, kind);
    const alike = places.filter((i) => roles[i] === role);
    const chosen = alike.find((i) => !isNominal(header[i])) ?? alike[0];
    return mappingFor(at === chosen ? role : IGNORE, name, kind);
  });
}

/** @returns what is to be checked about a column's unit, in words; null where the header names it */
export function unitUncertainty(
  header: string,
  { role, unit }: ColumnMapping,
  kind: TestKind,
): string | null {
  const name = roleDimension(kind, role);
  if (name === null || unitIn(header, name) !== null) return null;
  const strange = strangeUnit(header, name);
  if (strange === null) return "not in the header: check it";
  const units = unitLabels(name, unit).filter(Boolean).join(", ");
  return unit === "" ? `"${strange}" is no unit of it; allowed: ${units}` : `the header says "${strange}"`;
}

/** @returns the units to choose from, the present one among them */
export function unitChoices(kind: TestKind, role: Role, present: string): string[] {
  const name = roleDimension(kind, role);
  if (name === null) return [];
  return unitLabels(name, present);
}
