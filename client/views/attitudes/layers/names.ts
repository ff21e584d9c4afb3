import type { Group } from "../../../charts/frame.ts";
import { type Box, type Obstacle, placeFree, textWidth, type WantedBox } from "../../../charts/place.ts";
import { grams } from "../attitudeWords.ts";
import type { Rose } from "../rose.ts";
import { STATES } from "../stand.ts";
import { type PolarContext, spot } from "./polar.ts";

interface Name {
  readonly text: string;
  readonly tone: string;
  /** distance from the centre at an attitude [px] */
  readonly at: (angle: number) => number;
}

const LINE = 17;
const BASELINE = 13;
const STEP = 4;
/** Names keep off the rim by so much [px]. */
const INSET = 6;
const OFFSETS = [6, -6, 12, -12, 20, -20] as const;

function namesOf(rose: Rose, { r, radius }: PolarContext): Name[] {
  const needed = STATES.map((state) => ({
    text: `needed ${state}`,
    tone: "needed-text halo",
    at: (angle: number) => Math.min(radius, r(rose.stands[angle][state].pull)),
  }));
  const made = { text: `made ${grams(rose.made)}`, tone: "rotor-text halo", at: () => r(rose.made) };
  return rose.made > 0 ? [made, ...needed] : needed;
}

/** Whether a box lies in the half disc, so that it covers neither rings nor labels outside. */
function within({ x, y, width, height }: Box, radius: number): boolean {
  const far = Math.max(Math.abs(y), Math.abs(y + height));
  return x >= 0 && Math.hypot(x + width, far) <= radius - INSET;
}

/** Spots beside a curve, all along it, in the half disc. */
function wantedOf({ text, at }: Name, radius: number): WantedBox {
  const width = textWidth(text) + 4;
  const all = OFFSETS.flatMap((offset) =>
    Array.from({ length: 180 / STEP - 1 }, (_, i) => {
      const angle = (i + 1) * STEP;
      const [x, y] = spot(angle, at(angle) + offset);
      const lift = Math.sign(offset) * Math.cos((angle * Math.PI) / 180) * (LINE / 2);
      return { x: offset > 0 ? x : x - width, y: y - LINE / 2 + lift };
    }),
  );
  const spots = all.filter((each) => within({ ...each, width, height: LINE }, radius));
  return { width, height: LINE, spots: spots.length > 0 ? spots : all };
}

/** The curves' names, beside the curves and on nothing else. */
export function namesLayer(g: Group, rose: Rose, context: PolarContext): void {
  const names = namesOf(rose, context);
  const points = (at: (angle: number) => number): Obstacle[] =>
    rose.stands.map((stand) => spot(stand.angle, at(stand.angle)));
  const spokes = rose.named.flatMap(({ stand }) =>
    Array.from({ length: 30 }, (_, i): Obstacle => spot(stand.angle, (i / 30) * context.radius)),
  );
  const obstacles = [...names.flatMap((name) => points(name.at)), ...spokes];
  const { radius } = context;
  const room = { x: 2, y: -radius, width: radius - 2, height: 2 * radius };
  const boxes = placeFree(
    names.map((name) => wantedOf(name, radius)),
    obstacles,
    room,
  );
  const placed = names.map((name, i) => ({ ...name, box: boxes[i] }));
  g.selectAll<SVGTextElement, Name & { readonly box: Box }>("text")
    .data(placed, (name) => name.text)
    .join("text")
    .attr("class", (name) => name.tone)
    .attr("x", (name) => name.box.x + 2)
    .attr("y", (name) => name.box.y + BASELINE)
    .text((name) => name.text);
}
