import type { BaseType, Selection, ValueFn } from "d3";

/** Numbers in a path or an attribute. */
const NUMBERS = /-?\d+(?:\.\d+)?(?:e[-+]?\d+)?/g;

/** @returns a text on its way to another by a share: each of its numbers comes from the one in the same place before, and what has none stands */
export function between(from: string, to: string): (share: number) => string {
  const before = from.match(NUMBERS) ?? [];
  return (share) => {
    let place = 0;
    return to.replace(NUMBERS, (end) => {
      const start = before[place++];
      return start === undefined ? end : `${Number(start) + share * (Number(end) - Number(start))}`;
    });
  };
}

/** Slow, fast, slow. */
const eased = (share: number): number => (share < 0.5 ? 4 * share ** 3 : 1 - (2 - 2 * share) ** 3 / 2);

interface Move {
  readonly node: Element;
  readonly name: string;
  readonly to: string;
  readonly at: (share: number) => string;
}

/** By which glide an element moves: a newer one takes it over. */
const running = new WeakMap<BaseType & object, object>();

function run(moves: readonly Move[], glide: object, motion: number): void {
  const start = performance.now();
  const frame = (now: number) => {
    const share = Math.max(0, (now - start) / motion);
    for (const { node, name, to, at } of moves)
      if (running.get(node) === glide) node.setAttribute(name, share < 1 ? at(eased(share)) : to);
    if (share < 1) requestAnimationFrame(frame);
  };
  requestAnimationFrame(frame);
}

/** Brings attributes of a selection to their new values, in no time while something is dragged. */
export function glide<E extends Element, D>(
  selection: Selection<E, D, SVGGElement, unknown>,
  motion: number,
  values: Readonly<Record<string, ValueFn<E, D, string | number>>>,
): void {
  const moves: Move[] = [];
  const own = {};
  selection.each(function (datum, i, all) {
    running.set(this, own);
    for (const [name, value] of Object.entries(values)) {
      const to = `${value.call(this, datum, i, all)}`;
      const from = this.getAttribute(name);
      if (from === to) continue;
      if (motion > 0 && from !== null) moves.push({ node: this, name, to, at: between(from, to) });
      else this.setAttribute(name, to);
    }
  });
  if (moves.length > 0) run(moves, own, motion);
}
