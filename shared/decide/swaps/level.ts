import type { Bounds, Option } from "./bounds.ts";

/** Choices for the lines so far, one after the other by cost, then by mass. */
export interface Level {
  readonly size: number;
  readonly cost: Float64Array;
  readonly mass: Float64Array;
  /** place in the level before */
  readonly parent: Int32Array;
  /** place among the line's options */
  readonly option: Int32Array;
}

/** Before the first line: nothing chosen. */
export const NOTHING_CHOSEN: Level = {
  size: 1,
  cost: new Float64Array(1),
  mass: new Float64Array(1),
  parent: new Int32Array(1),
  option: new Int32Array(1),
};

/** What a set of choices must beat to be of interest. */
export interface Beaten {
  readonly cost: number;
  readonly mass: number;
}

/** What one line's options are judged by. */
export interface Asked {
  /** greatest mass of all lines together */
  readonly allowed: number;
  /** of the lines that are still to come */
  readonly bounds: Bounds;
  /** how many sets are wanted */
  readonly wanted: number;
  /** the worst of the sets found so far, or what is too dear in any case */
  readonly beaten: Beaten;
  /** most choices that are kept */
  readonly width: number;
}

/** Where choices are kept while a level is made; level after level takes the same. */
export class Room {
  readonly cost: Float64Array;
  readonly mass: Float64Array;
  readonly bound: Float64Array;
  readonly parent: Int32Array;
  readonly option: Int32Array;

  constructor(width: number) {
    const places = 2 * width;
    this.cost = new Float64Array(places);
    this.mass = new Float64Array(places);
    this.bound = new Float64Array(places);
    this.parent = new Int32Array(places);
    this.option = new Int32Array(places);
  }
}

/** The choices that are kept while a level is made; those with the largest bounds go when there are too many. */
class Kept {
  size = 0;
  isCut = false;
  /** masses of the lightest choices so far, as many as sets are wanted, lightest first */
  private readonly lightest: number[] = [];

  constructor(
    private readonly asked: Asked,
    private readonly room: Room,
  ) {}

  /** Takes a choice that costs no less than those before, unless it can't be among the sets wanted. */
  offer(cost: number, mass: number, parent: number, option: number): void {
    const { wanted } = this.asked;
    if (this.lightest.length === wanted && this.lightest[wanted - 1] <= mass) return;
    const bound = this.boundOf(cost, mass);
    if (bound === Number.POSITIVE_INFINITY) return;
    this.noteMass(mass);
    const { room, size } = this;
    room.cost[size] = cost;
    room.mass[size] = mass;
    room.bound[size] = bound;
    room.parent[size] = parent;
    room.option[size] = option;
    this.size += 1;
    if (this.size === room.cost.length) this.cut();
  }

  /** @returns the least that it can come to; ∞ where it can't get light enough, or can't beat what is to be beaten */
  private boundOf(cost: number, mass: number): number {
    const { allowed, bounds, beaten } = this.asked;
    const bound = cost + bounds.leastCost(allowed - mass);
    if (bound < beaten.cost) return bound;
    const isAsCheap = bound === beaten.cost && mass + bounds.leastMass(beaten.cost - cost) < beaten.mass;
    return isAsCheap ? bound : Number.POSITIVE_INFINITY;
  }

  private noteMass(mass: number): void {
    let place = this.lightest.length;
    while (place > 0 && this.lightest[place - 1] > mass) place -= 1;
    this.lightest.splice(place, 0, mass);
    if (this.lightest.length > this.asked.wanted) this.lightest.pop();
  }

  /** Leaves as many as the width, those with the smallest bounds, in their order. */
  private cut(): void {
    const { width } = this.asked;
    const { cost, mass, bound, parent, option } = this.room;
    this.isCut = true;
    const last = bound.slice(0, this.size).sort()[width - 1];
    let [ties, to] = [width, 0];
    for (let i = 0; i < this.size; i++) if (bound[i] < last) ties -= 1;
    for (let i = 0; i < this.size; i++) {
      if (bound[i] > last || (bound[i] === last && ties <= 0)) continue;
      if (bound[i] === last) ties -= 1;
      for (const list of [cost, mass, bound, parent, option]) list[to] = list[i];
      to += 1;
    }
    this.size = to;
  }

  level(): Level {
    if (this.size > this.asked.width) this.cut();
    const { size, room } = this;
    return {
      size,
      cost: room.cost.slice(0, size),
      mass: room.mass.slice(0, size),
      parent: room.parent.slice(0, size),
      option: room.option.slice(0, size),
    };
  }
}

/**
 * The choices for one line more: each option beside each choice so far, merged by cost, without those that can't be among the sets wanted.
 *
 * @param before - choices for the lines before [steps of a grid]
 * @param options - of this line [steps of a grid]
 * @param asked - limits, bounds of what follows, what is to be beaten [steps of a grid]
 * @param room - where they are kept meanwhile, of the same width
 * @returns the choices by cost, then mass [steps of a grid], and whether some were left out only because there were too many
 *
 * Valid for costs of 0 or more. A choice goes where as many others as are wanted cost no more and weigh no more, or where its bound is no better than what is to be beaten.
 * Source: Nemhauser & Ullmann, Discrete dynamic programming and capital allocation, Manage. Sci. 15 (1969) 494–505
 */
export function nextLevel(
  before: Level,
  options: readonly Option[],
  asked: Asked,
  room: Room,
): { readonly level: Level; readonly isCut: boolean } {
  const kept = new Kept(asked, room);
  const heads = new Int32Array(options.length);
  const { size, cost, mass } = before;
  for (;;) {
    let [best, bestCost, bestMass] = [-1, 0, 0];
    for (let i = 0; i < options.length; i++) {
      const head = heads[i];
      if (head === size) continue;
      const own = cost[head] + options[i].cost;
      if (best >= 0 && own > bestCost) continue;
      const weight = mass[head] + options[i].mass;
      if (best < 0 || own < bestCost || weight < bestMass) [best, bestCost, bestMass] = [i, own, weight];
    }
    if (best < 0) break;
    kept.offer(bestCost, bestMass, heads[best], best);
    heads[best] += 1;
  }
  return { level: kept.level(), isCut: kept.isCut };
}
