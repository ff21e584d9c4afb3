import type { ChooseRequest } from "../../../../shared/model/api/choose.ts";
import { go, href, route } from "../../../app/router.ts";
import { tried } from "../../../state/browserStore.ts";
import type { Column } from "../answers.ts";
import { COLUMNS } from "../columns.ts";

/** Most combinations that are compared side by side. */
export const MOST_PINNED = 6;

/** What the address says of how a job's combinations are looked at. */
export interface Shown {
  readonly x: Column;
  readonly y: Column;
  /** index of the combination that is looked at; null: the best */
  readonly look: number | null;
  readonly pins: readonly number[];
}

const column = (text: string | null, usual: Column): Column =>
  COLUMNS.find(({ key }) => key === text)?.key ?? usual;

const index = (text: string): number | null => (/^\d{1,9}$/.test(text) ? Number(text) : null);

/** @returns what an address says; what can't be read is as it is without */
export function shownFrom(query: URLSearchParams): Shown {
  const pins = (query.get("pins") ?? "").split(",").map(index);
  return {
    x: column(query.get("x"), "mass"),
    y: column(query.get("y"), "margin"),
    look: index(query.get("look") ?? ""),
    pins: [...new Set(pins.filter((pin) => pin !== null))].slice(0, MOST_PINNED),
  };
}

/** @returns the address's query for it; what is usual is left out */
export function shownQuery({ x, y, look, pins }: Shown): Record<string, string> {
  return {
    ...(x === "mass" ? {} : { x }),
    ...(y === "margin" ? {} : { y }),
    ...(look === null ? {} : { look: String(look) }),
    ...(pins.length === 0 ? {} : { pins: pins.join(",") }),
  };
}

/** @returns the pins with one more, or without it; as they are where no place is left */
export function withPin(pins: readonly number[], at: number): readonly number[] {
  if (pins.includes(at)) return pins.filter((pin) => pin !== at);
  return pins.length < MOST_PINNED ? [...pins, at] : pins;
}

/** Writes into the address how the combinations are looked at, leaving no step in the history. */
export function show(next: Shown): void {
  const { id } = route.peek();
  go(href("choose", id, shownQuery(next)), { replace: true });
}

const KEY = "gripcurve-choose";

/** The question asked last, so that it can be asked again when the server has forgotten it. */
export interface Asked {
  /** null: it was cancelled */
  readonly id: string | null;
  readonly request: ChooseRequest;
}

export function remember(asked: Asked): void {
  tried(() => sessionStorage.setItem(KEY, JSON.stringify(asked)), undefined);
}

/** @returns the question asked last in this tab, or null */
export function remembered(): Asked | null {
  const text = tried(() => sessionStorage.getItem(KEY), null);
  return text === null ? null : (JSON.parse(text) as Asked);
}
