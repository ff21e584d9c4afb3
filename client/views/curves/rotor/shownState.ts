import { useState } from "preact/hooks";
import { DEFAULT_WEATHER, type Weather } from "../../../../shared/physics/air.ts";
import { go, href, route } from "../../../app/router.ts";
import { type RotorFamily, readingsInUse } from "./family.ts";
import type { Shown } from "./shown.ts";

export const SHOWN_AS = ["pressure", "psi", "lambda", "efficiency"] as const;
export type ShownAs = (typeof SHOWN_AS)[number];

/** What the controls of a rotor's page hold. */
export interface ShownState {
  readonly as: ShownAs;
  readonly rpm: number;
  readonly diameter: number;
  readonly weather: Weather;
}

/** Speed shown for a rotor that no test has turned yet [rpm]. */
const UNTESTED_SPEED = 20_000;

const middle = (values: readonly number[]) =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];

/** Three digits are as many as a speed slider needs. */
const rounded = (rpm: number) => Number(rpm.toPrecision(3));

/** @returns sizes to look at: those of the family and those that were tested, by rising diameter [m] */
export function sizesOf(family: RotorFamily): number[] {
  const sizes = [
    ...family.rotor.data.sizes.map((size) => size.diameter),
    ...family.readings.map((reading) => reading.diameter),
  ];
  return [...new Set(sizes.map((diameter) => Number(diameter.toFixed(6))))].sort((a, b) => a - b);
}

/** @returns lowest and highest speed of the slider [rpm]: around what was tested */
export function speedRange(family: RotorFamily): [number, number] {
  const speeds = family.readings.map((reading) => reading.rpm);
  if (speeds.length === 0) return [rounded(UNTESTED_SPEED / 4), rounded(UNTESTED_SPEED * 2)];
  return [rounded(Math.min(...speeds) / 2), rounded(Math.max(...speeds) * 1.5)];
}

/** @returns what is shown first: the middle of the tested speeds and sizes, or what the address asks for */
export function firstShown(family: RotorFamily, query: URLSearchParams): ShownState {
  const used = readingsInUse(family);
  const asked = SHOWN_AS.find((each) => each === query.get("show"));
  const positive = (name: string) => {
    const value = Number(query.get(name));
    return value > 0 && Number.isFinite(value) ? value : null;
  };
  const diameter = used.length > 0 ? middle(used.map((r) => r.diameter)) : (sizesOf(family)[0] ?? 0.04);
  const rpm = used.length > 0 ? rounded(middle(used.map((r) => r.rpm))) : UNTESTED_SPEED;
  const millimetres = positive("mm");
  return {
    as: asked ?? "pressure",
    rpm: positive("rpm") ?? rpm,
    diameter: millimetres === null ? diameter : millimetres / 1e3,
    weather: DEFAULT_WEATHER,
  };
}

/** @returns the state as what a chart shows */
export function shownOf(state: ShownState): Shown {
  const { as, rpm, diameter, weather } = state;
  return as === "pressure" ? { as, rpm, diameter, weather } : { as };
}

function writeAddress(state: ShownState): void {
  const { view, id } = route.value;
  const query: Record<string, string> = { show: state.as };
  if (state.as === "pressure") {
    query.rpm = String(state.rpm);
    query.mm = String(Number((state.diameter * 1e3).toFixed(3)));
  }
  go(href(view, id, query), { replace: true });
}

/** The page's controls; what is settled (not while a slider is dragged) stands in the address as well. */
export function useShown(
  family: RotorFamily | null,
): [ShownState, (change: Partial<ShownState>, settled: boolean) => void] {
  const [state, setState] = useState<ShownState>(() =>
    family
      ? firstShown(family, route.value.query)
      : { as: "psi", rpm: UNTESTED_SPEED, diameter: 1, weather: DEFAULT_WEATHER },
  );
  const change = (part: Partial<ShownState>, settled: boolean) => {
    const next = { ...state, ...part };
    setState(next);
    if (settled) writeAddress(next);
  };
  return [state, change];
}
