/**
 * Which control comes next where the focused one has gone: what has taken its place, else the one behind it, else the
 * one before it.
 *
 * @param before - the controls in the page's order when the lost one got the focus
 * @param lost - one of them
 * @param now - the controls in the page's order as they are
 * @param isWished - which of those that took its place is preferred to the first
 * @returns null where nothing of what was there is left
 */
export function successor<Control>(
  before: readonly Control[],
  lost: Control,
  now: readonly Control[],
  isWished: (control: Control) => boolean,
): Control | null {
  const at = before.indexOf(lost);
  const place = new Map(now.map((control, i) => [control, i]));
  const previous = before.slice(0, at).findLast((control) => place.has(control));
  const next = before.slice(at + 1).find((control) => place.has(control));
  if (previous === undefined && next === undefined) return null;
  const from = previous === undefined ? 0 : (place.get(previous) ?? 0) + 1;
  const until = next === undefined ? now.length : place.get(next);
  const instead = now.slice(from, until);
  return instead.find(isWished) ?? instead[0] ?? next ?? previous ?? null;
}
