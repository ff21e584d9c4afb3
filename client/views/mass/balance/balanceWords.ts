import type { Balance } from "../../../../shared/book/mass/balance.ts";
import type { Build } from "../../../../shared/model/build.ts";
import { formatQuantity } from "../../../../shared/units/format.ts";

/** Names said before the rest are counted. */
const MOST_NAMES = 3;

export const mm = (metres: number): string => formatQuantity(metres, "length", { decimals: 0 });

/** "57 mm ahead of the rear axle" */
const aheadText = (fromRear: number): string =>
  fromRear < 0 ? `${mm(-fromRear)} behind the rear axle` : `${mm(fromRear)} ahead of the rear axle`;

/** @returns where the centre of gravity is, and where that comes from */
export function balanceSentence({ centre, isWhole, lines }: Balance, { vehicle }: Build): string {
  const where = (fromRear: number, height: number) =>
    `Centre of gravity ${aheadText(fromRear)}, ${mm(height)} over the surface`;
  if (isWhole && centre)
    return `${where(centre.fromRear, centre.height)}, from the places of all ${lines.length} lines: this counts in every figure.`;
  const typed = `${where(vehicle.cgFromRear, vehicle.cgHeight)}, as typed in the build.`;
  const open = lines.filter(({ place }) => place === null).map(({ name }) => name);
  if (open.length === lines.length) return `${typed} Give every line its place, and theirs counts instead.`;
  const named = open.slice(0, MOST_NAMES).join(", ");
  const more = open.length > MOST_NAMES ? ` and ${open.length - MOST_NAMES} more` : "";
  return `${typed} Without a place yet: ${named}${more}.`;
}
