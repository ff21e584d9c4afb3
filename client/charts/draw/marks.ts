import { keptOn } from "../kept.ts";
import type { Bracket, Mark } from "../model/plot.ts";
import type { Group } from "./frame.ts";
import type { Ground, Straight } from "./ground.ts";
import { tenths } from "./path.ts";
import { shapePath } from "./shapes.ts";

const OUTLIER = 9;

interface Look {
  readonly name: string;
  readonly shape: string;
  path: string;
}

const outlierPath = `m${-OUTLIER},0a${OUTLIER},${OUTLIER} 0 1,0 ${2 * OUTLIER},0a${OUTLIER},${OUTLIER} 0 1,0 ${-2 * OUTLIER},0z`;

function nameOf({ tone, aside, small, shape }: Mark): string {
  return `chart-mark tone-${tone}${aside ? " aside" : ""}${small ? " small" : ""} shape-${shape}`;
}

/** Readings of one look are one path, so that thousands cost no more than a few. */
const looksOf = keptOn((data: readonly Mark[], { at, shows }: Ground): Look[] => {
  const looks = new Map<string, Look>();
  const add = (name: string, shape: () => string, x: number, y: number) => {
    const look = looks.get(name) ?? { name, shape: shape(), path: "" };
    look.path += `M${tenths(x)},${tenths(y)}${look.shape}`;
    looks.set(name, look);
  };
  for (const mark of data) {
    const [x, y] = at(mark.x, mark.y);
    if (!shows(x, y)) continue;
    add(nameOf(mark), () => shapePath(mark.shape, mark.small), x, y);
    if (mark.outlier && !mark.aside) add("chart-outlier", () => outlierPath, x, y);
  }
  return [...looks.values()];
});

/** Readings: one outlined shape a test; those set aside are quiet, an outlier wears a ring. */
export function marks(g: Group, data: readonly Mark[], ground: Ground): void {
  g.selectAll<SVGPathElement, Look>("path")
    .data(looksOf(data, ground), (look) => look.name)
    .join("path")
    .put("class", (look) => look.name)
    .put("d", (look) => look.path)
    .order();
}

const CAP = 4;

/** A bracket: a bar from the last that held to the first that did not; an arrow where it stays open. */
function bracketPath(bracket: Bracket, ground: Straight): string {
  const upright = bracket.along === "y";
  const [scale, cross] = upright ? [ground.y, ground.x] : [ground.x, ground.y];
  const end = upright ? 0 : ground.width;
  const lo = scale(bracket.lo);
  const hi = bracket.hi === null ? end : scale(bracket.hi);
  const at = cross(bracket.at);
  const point = (along: number, aside: number) =>
    upright ? `${tenths(at + aside)},${tenths(along)}` : `${tenths(along)},${tenths(at + aside)}`;
  const back = upright ? CAP : -CAP;
  const tip =
    bracket.hi === null
      ? `M${point(hi + back, -CAP)}L${point(hi, 0)}L${point(hi + back, CAP)}`
      : `M${point(hi, -CAP)}L${point(hi, CAP)}`;
  return `M${point(lo, -CAP)}L${point(lo, CAP)}M${point(lo, 0)}L${point(hi, 0)}${tip}`;
}

/** Readings known only to lie between two bounds. */
export function brackets(g: Group, data: readonly Bracket[], ground: Straight): void {
  g.selectAll<SVGPathElement, Bracket>("path")
    .data(data, (bracket) => bracket.key)
    .join("path")
    .put("class", (bracket) => `chart-bracket tone-${bracket.tone}${bracket.aside ? " aside" : ""}`)
    .put("d", (bracket) => bracketPath(bracket, ground));
}
