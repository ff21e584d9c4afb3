import { type Selection, select } from "d3";
import "./put.ts";

export interface Margin {
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
  readonly left: number;
}

export interface FrameSize {
  readonly width: number;
  readonly height: number;
  readonly margin: Margin;
}

export type Group = Selection<SVGGElement, unknown, null, undefined>;

/** The drawing's ground: its plot area and the groups that the layers draw into. */
export interface Frame {
  /** of the plot area [px] */
  readonly width: number;
  readonly height: number;
  /** of the whole drawing [px] */
  readonly total: number;
  /** ranges for the scales: x rightwards, y upwards */
  readonly rangeX: [number, number];
  readonly rangeY: [number, number];
  /** the plot's group, its origin at the plot's top left corner */
  readonly plot: Group;
  /** a named group in the plot, made once, in the order of first asking; `clipped` cuts it at the plot's edge */
  readonly layer: (name: string, options?: { readonly clipped?: boolean }) => Group;
}

let clips = 0;

const drawn = new WeakMap<Element, readonly unknown[]>();

/**
 * Draws into a group, unless it stands there already.
 *
 * @param of - all that the drawing depends on; objects are never changed in place
 */
export function drawOnce(g: Group, of: readonly unknown[], draw: (g: Group) => void): void {
  const node = g.node();
  const last = node && drawn.get(node);
  if (last && last.length === of.length && of.every((each, i) => each === last[i])) return;
  draw(g);
  if (node) drawn.set(node, of);
}

/** A child with that class, made when it is not there yet. */
export function child<P extends SVGElement, T extends "g" | "defs" | "clipPath" | "rect">(
  parent: Selection<P, unknown, null, undefined>,
  tag: T,
  name: string,
): Selection<SVGElementTagNameMap[T], unknown, null, undefined> {
  const found = parent.select<SVGElementTagNameMap[T]>(`:scope > ${tag}.${name}`);
  return found.empty() ? parent.append<SVGElementTagNameMap[T]>(tag).put("class", name) : found;
}

/**
 * Makes the ground of a chart once; called again it only follows the size.
 *
 * @param root - the drawing, or a group in it, at true pixel size, never scaled
 */
export function chartFrame(root: SVGSVGElement | SVGGElement, { width, height, margin }: FrameSize): Frame {
  const ground: Selection<SVGElement, unknown, null, undefined> = select<SVGElement, unknown>(root);
  ground.put("width", width).attr("height", height);
  const inner = {
    width: Math.max(1, width - margin.left - margin.right),
    height: Math.max(1, height - margin.top - margin.bottom),
  };
  const clip = child(child(ground, "defs", "frame-defs"), "clipPath", "frame-clip");
  if (!clip.attr("id")) clip.put("id", `frame-clip-${++clips}`);
  child(clip, "rect", "frame-clip-rect").put("width", inner.width).attr("height", inner.height);
  const plot = child(ground, "g", "frame-plot").put("transform", `translate(${margin.left},${margin.top})`);
  return {
    ...inner,
    total: width,
    rangeX: [0, inner.width],
    rangeY: [inner.height, 0],
    plot,
    layer: (name, { clipped = false } = {}) =>
      child(plot, "g", `layer-${name}`).put("clip-path", clipped ? `url(#${clip.attr("id")})` : null),
  };
}
