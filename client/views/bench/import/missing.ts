import { columnsOf, KINDS } from "../record/kinds.ts";
import { adjustmentOf } from "./adjust.ts";
import type { PointsRequest } from "./points.ts";
import { IGNORE, OPEN, type Role, roleDimension, roleLabel } from "./roles.ts";

/** @returns the fields on which it depends which columns a row has */
export function flowOf({ flowFrom, holeKinds }: PointsRequest): { readonly flowFrom: string } {
  return { flowFrom: flowFrom ?? (holeKinds > 0 ? "bleed-plate" : "known-flow") };
}

/** Of two columns one is enough: what counts how much was drawn, what brackets a slide. */
const ONE_OF: Readonly<Record<string, readonly [Role, Role]>> = {
  discharge: ["charge", "time"],
  friction: ["held", "slid"],
};

const isOnce = (role: Role): boolean => role !== IGNORE && role !== OPEN;

function missingHoles({ kind = "curve", mapping, holeKinds, flowFrom }: PointsRequest): string[] {
  if (!KINDS[kind].plate) return [];
  if (flowFrom === "bleed-plate" && holeKinds === 0) return ["Give the bleed plate's holes below."];
  if (holeKinds === 0 || mapping.filter(({ role }) => role === OPEN).length === holeKinds) return [];
  return [`Choose ${holeKinds} columns with open holes, one for each kind of hole.`];
}

/** A column whose unit nobody can know skips every line until it is chosen. */
function missingUnits({ kind = "curve", mapping, table }: PointsRequest): string[] {
  return mapping.flatMap(({ role, unit }, i) =>
    unit === "" && roleDimension(kind, role) !== null
      ? [`Choose the unit of "${table.header[i]}": the header names none that is known.`]
      : [],
  );
}

/** A factor or a tare that can't be read holds every line up. */
function unreadAdjustments({ mapping, table }: PointsRequest): string[] {
  return mapping.flatMap((column, i) => {
    const adjustment = adjustmentOf(column);
    return "problem" in adjustment ? [`${table.header[i]}: ${adjustment.problem}.`] : [];
  });
}

/** @returns what a mapping lacks before any line can be read; empty where nothing is missing */
export function missingRoles(request: PointsRequest): string[] {
  const { mapping, kind = "curve", commonSpeed } = request;
  const has = (role: Role) => mapping.some((column) => column.role === role);
  const named = (role: Role) => roleLabel(kind, role);
  const required = columnsOf(KINDS[kind], flowOf(request)).filter(({ need }) => need === "required");
  const missing = required
    .filter(({ key }) => !has(key) && !(kind === "curve" && key === "speed"))
    .map(({ key }) => `Choose the column with ${key === "held" ? "what held" : `the ${named(key)}`}.`);
  const oneOf = ONE_OF[kind];
  if (oneOf && !oneOf.some(has))
    missing.push(`Choose the column with "${named(oneOf[0])}", or with "${named(oneOf[1])}".`);
  missing.push(...missingHoles(request));
  if (kind === "curve" && !has("speed") && commonSpeed.trim() === "")
    missing.push("Choose the column with the speed, or give one speed for all points.");
  const twice = mapping.find(
    ({ role }, i) => isOnce(role) && mapping.findIndex((other) => other.role === role) < i,
  );
  if (twice) missing.push(`Two columns are ${named(twice.role)}; leave one of them out.`);
  return [...missing, ...missingUnits(request), ...unreadAdjustments(request)];
}
