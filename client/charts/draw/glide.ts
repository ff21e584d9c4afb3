import { type BaseType, type Selection, transition, type ValueFn } from "d3";

/** Brings attributes of a selection to their new values, in no time while something is dragged. */
export function glide<E extends BaseType, D>(
  selection: Selection<E, D, SVGGElement, unknown>,
  motion: number,
  values: Readonly<Record<string, ValueFn<E, D, string | number>>>,
): void {
  if (motion > 0) {
    const moved = selection.transition(transition().duration(motion));
    for (const [name, value] of Object.entries(values)) moved.attr(name, value);
    return;
  }
  selection.interrupt();
  for (const [name, value] of Object.entries(values)) selection.put(name, value);
}
