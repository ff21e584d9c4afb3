import type { MapKey } from "../../../shared/decide/map/place.ts";
import { MOTOR } from "../../../shared/model/limits.ts";
import type { NumberSpec } from "../../../shared/units/readNumber.ts";
import { HANDLES, type HandleKey } from "../../state/handles.ts";

/** A setting as an axis, or as what is dragged. */
export interface MapSetting extends NumberSpec {
  readonly key: MapKey;
  readonly label: string;
  readonly decimals: number;
  /** ends of its axis for a build that stands at `was`, SI */
  readonly ends: (was: number) => readonly [number, number];
  readonly whole: boolean;
}

/** Narrower and emptier than these no map is drawn [m, -]. */
const [LEAST_GAP, LEAST_CHARGE] = [2e-5, 0.05];

const KV: MapSetting = {
  key: "kv",
  label: "Speed constant",
  dimension: "kv",
  decimals: 0,
  limits: { min: 1, max: MOTOR.kv.max },
  ends: (was) => [0.4 * was, 1.8 * was],
  whole: false,
};

function ofHandle(key: Exclude<MapKey, "kv"> & HandleKey): MapSetting {
  const handle = HANDLES.find((each) => each.key === key);
  if (!handle) throw new Error(`No setting ${key}.`);
  const { slide, put: _put, ...spec } = handle;
  const least = { gap: LEAST_GAP, charge: LEAST_CHARGE }[key as string] ?? 0;
  const ends = (was: number): readonly [number, number] => {
    const [from, to] = slide(was);
    return [Math.max(least, from), to];
  };
  return { ...spec, key, ends, whole: key === "series" };
}

/** In the order of the menus. */
const BY_KEY: Readonly<Record<MapKey, MapSetting>> = {
  diameter: ofHandle("diameter"),
  kv: KV,
  series: ofHandle("series"),
  gap: ofHandle("gap"),
  mass: ofHandle("mass"),
  duty: ofHandle("duty"),
  charge: ofHandle("charge"),
  wheelFriction: ofHandle("wheelFriction"),
};
export const MAP_SETTINGS: readonly MapSetting[] = Object.values(BY_KEY);

/** @returns a setting by its key */
export const settingBy = (key: MapKey): MapSetting => BY_KEY[key];

/** @returns values of an axis, even, both ends among them; whole ones where only those are [SI] */
export function axisValues({ ends, whole }: MapSetting, was: number, count: number): number[] {
  const [from, to] = ends(was);
  const n = whole ? Math.round(to - from) + 1 : count;
  return Array.from({ length: n }, (_, i) => from + ((to - from) * i) / (n - 1));
}
