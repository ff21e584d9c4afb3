const SETTLE_MS = 200;

/** @returns how long a curve takes to its new place [ms]: no time while dragging or where motion is unwanted */
export function motionMs(settled: boolean): number {
  if (!settled || matchMedia("(prefers-reduced-motion: reduce)").matches) return 0;
  return SETTLE_MS;
}
