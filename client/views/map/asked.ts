import { MAP_KEYS, type MapKey } from "../../../shared/decide/map/place.ts";

/** What the field shows. */
export const SHOWN = ["margin", "minutes", "winding", "chance"] as const;
export type Shown = (typeof SHOWN)[number];

/** What is asked of the map; the address carries it. */
export interface Asked {
  readonly x: MapKey;
  readonly y: MapKey;
  /** what is dragged */
  readonly third: MapKey;
  readonly shown: Shown;
  /** where the build is moved to, SI; a key that isn't there stands as in the build */
  readonly moved: Readonly<Partial<Record<MapKey, number>>>;
}

const FIRST: Asked = { x: "diameter", y: "kv", third: "gap", shown: "margin", moved: {} };

const oneOf = <T extends string>(known: readonly T[], text: string | null, other: T): T =>
  known.find((each) => each === text) ?? other;

/** @returns the first setting that none of these is */
export function freeKey(taken: readonly MapKey[], among: readonly MapKey[] = MAP_KEYS): MapKey {
  return among.find((key) => !taken.includes(key)) ?? MAP_KEYS[0];
}

/** @returns what an address asks; what can't be is left as it is at first */
export function askedFrom(query: URLSearchParams): Asked {
  const x = oneOf(MAP_KEYS, query.get("x"), FIRST.x);
  const wanted = oneOf(MAP_KEYS, query.get("y"), FIRST.y);
  const y = wanted === x ? freeKey([x]) : wanted;
  const third = oneOf(MAP_KEYS, query.get("third"), FIRST.third);
  const moved = Object.fromEntries(
    MAP_KEYS.flatMap((key) => {
      const value = Number(query.get(key) ?? "");
      return value > 0 && Number.isFinite(value) ? [[key, value] as const] : [];
    }),
  );
  return {
    x,
    y,
    third: third === x || third === y ? freeKey([x, y]) : third,
    shown: oneOf(SHOWN, query.get("show"), FIRST.shown),
    moved,
  };
}

/** @returns the same as an address carries it */
export function askedQuery({ x, y, third, shown, moved }: Asked): Record<string, string> {
  const places = Object.entries(moved).map(([key, value]) => [key, String(value)] as const);
  return { x, y, third, show: shown, ...Object.fromEntries(places) };
}
