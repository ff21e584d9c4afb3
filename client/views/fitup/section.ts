import type { FitStack, StackLine } from "../../../shared/book/fitUp/fitStack.ts";
import { PART_SIZES, type StackedParts } from "../../../shared/book/fitUp/partSizes.ts";
import type { StackVerdict } from "../../../shared/decide/fitUp/stack.ts";
import { isRound } from "./fitWords.ts";

/** What is drawn of a stack, all lengths true [m]; x to the right, y up. */
export interface Panel {
  readonly name: string;
  readonly verdict: StackVerdict;
  readonly shapes: readonly Shape[];
  /** where it is tight: along the arrow there is that much room, or too little */
  readonly tight: Tight;
}

export type Look = "wall" | "part" | "own" | "free" | "over" | "wheel" | "surface";

export interface Box {
  readonly look: Look;
  readonly x: number;
  /** lower edge */
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly label?: string;
}

export interface Round {
  readonly look: Look;
  readonly cx: number;
  readonly cy: number;
  readonly r: number;
  readonly label?: string;
}

export type Shape = Box | Round;

export interface Tight {
  readonly from: readonly [number, number];
  readonly to: readonly [number, number];
  /** what is left there [m]; below 0: what is missing */
  readonly room: number;
  /** the same on the other side */
  readonly isSide: boolean;
}

interface Sized extends StackLine {
  readonly nominal: number;
}
type Solved = FitStack & { readonly stack: NonNullable<FitStack["stack"]>; readonly lines: readonly Sized[] };

/** Of a wall, against what it stands round [-]. */
const WALL = 0.06;
/** Of a part whose width nobody knows, against the space's height [-]. */
const UNKNOWN_WIDTH = 0.5;

/** A part's other size, where its record has it: a motor's body is as wide as its diameter. */
function widthOf({ of }: StackLine, parts: StackedParts): number | null {
  if (of === "motor.length") return PART_SIZES["motor.diameter"].of(parts);
  if (of === "rotor.height" || of === "rotor.inletAir") return PART_SIZES["rotor.diameter"].of(parts);
  return null;
}

function lengthOf({ kind }: FitStack, parts: StackedParts): number | null {
  if (kind === "pocket") return PART_SIZES["motor.length"].of(parts);
  return kind === "tip" ? PART_SIZES["rotor.height"].of(parts) : null;
}

const lookOf = ({ basis, of }: StackLine): Look => (basis === "free" ? "free" : of === null ? "own" : "part");

/** Parts one upon the other between two faces; what stands out of the space is marked. */
function column({ name, lines, stack }: Solved, parts: StackedParts): Panel {
  const [space, ...filling] = lines;
  const known = filling.flatMap((line) => widthOf(line, parts) ?? []);
  const widest = Math.max(UNKNOWN_WIDTH * space.nominal, ...known);
  const wall = WALL * Math.max(widest, space.nominal);
  const outer = widest + 4 * wall;
  const face = (y: number): Box => ({ look: "wall", x: -outer / 2, y, width: outer, height: wall });
  let y = 0;
  const boxes = filling.flatMap((line) => {
    const width = widthOf(line, parts) ?? widest;
    return Array.from({ length: line.quantity }, (): Box => {
      const box = { look: lookOf(line), x: -width / 2, y, width, height: line.nominal, label: line.name };
      y += line.nominal;
      return box;
    });
  });
  const over = y - space.nominal;
  const standingOut: Box[] =
    over > 0 ? [{ look: "over", x: -widest / 2, y: space.nominal, width: widest, height: over }] : [];
  return {
    name,
    verdict: stack.verdict,
    shapes: [face(-wall), ...boxes, { ...face(space.nominal), label: space.name }, ...standingOut],
    tight: { from: [0, y], to: [0, space.nominal], room: stack.clearance, isSide: false },
  };
}

/** A round part in its bore, cut along the axis: the clearance stands on either side. */
function bore(fit: Solved, parts: StackedParts): Panel {
  const { name, lines, stack } = fit;
  const [space, ...filling] = lines;
  const height = lengthOf(fit, parts) ?? UNKNOWN_WIDTH * space.nominal;
  const wall = WALL * space.nominal * 2;
  const bodies = filling.filter(({ basis }) => basis !== "free");
  const inner = bodies.reduce((sum, { nominal, quantity }) => sum + quantity * nominal, 0);
  const body = bodies.at(0);
  const taken = space.nominal - stack.clearance;
  const side = (x: number): Box => ({ look: "wall", x, y: 0, width: wall, height });
  const box: Box = {
    look: body ? lookOf(body) : "own",
    x: -inner / 2,
    y: 0,
    width: inner,
    height,
    label: body?.name,
  };
  const half = space.nominal / 2;
  return {
    name,
    verdict: stack.verdict,
    shapes: [side(-half - wall), side(half), box],
    tight: { from: [taken / 2, height / 2], to: [half, height / 2], room: stack.clearance / 2, isSide: true },
  };
}

/** A wheel on the surface, and the lip beside it at its height over it; the last size is from the lip up to the axle. */
function standing({ name, lines, stack }: Solved): Panel {
  const [wheel, ...filling] = lines;
  const radius = wheel.nominal;
  const lip = stack.clearance;
  const axle = lip + (filling.at(-1)?.nominal ?? 0);
  const wall = WALL * radius;
  const lipX = 1.15 * radius;
  return {
    name,
    verdict: stack.verdict,
    shapes: [
      { look: "wheel", cx: 0, cy: axle, r: radius, label: wheel.name },
      {
        look: "wall",
        x: lipX,
        y: lip,
        width: radius * 0.35,
        height: Math.max(wall, axle - lip),
        label: "Lip",
      },
      { look: "surface", x: -1.1 * radius, y: -2 * wall, width: 2.9 * radius, height: 2 * wall },
    ],
    tight: { from: [lipX + 0.175 * radius, 0], to: [lipX + 0.175 * radius, lip], room: lip, isSide: false },
  };
}

const isSolved = (fit: FitStack): fit is Solved => fit.stack !== null;

/** @returns the stacks that have all their sizes as they are drawn, true to one scale */
export function panelsOf(fits: readonly FitStack[], parts: StackedParts): Panel[] {
  return fits.filter(isSolved).map((fit) => {
    if (fit.kind === "gap") return standing(fit);
    return isRound(fit.kind) ? bore(fit, parts) : column(fit, parts);
  });
}

/** @returns what a panel takes up [m] */
export function extentOf({ shapes }: Panel): { x0: number; x1: number; y0: number; y1: number } {
  const ends = shapes.map((shape) =>
    "r" in shape
      ? [shape.cx - shape.r, shape.cx + shape.r, shape.cy - shape.r, shape.cy + shape.r]
      : [shape.x, shape.x + shape.width, shape.y, shape.y + shape.height],
  );
  return {
    x0: Math.min(...ends.map(([x]) => x)),
    x1: Math.max(...ends.map(([, x]) => x)),
    y0: Math.min(...ends.map(([, , y]) => y)),
    y1: Math.max(...ends.map(([, , , y]) => y)),
  };
}
