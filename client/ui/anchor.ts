/** @returns the id under which a field is found on the page */
export function anchorOf(path: string): string {
  return `at-${path.replaceAll(".", "-")}`;
}

const INPUTS = "input, select, textarea, button";

/** Brings the field of a path onto the screen, unfolded and ready to be typed in. */
export function goToField(path: string): void {
  const place = document.getElementById(anchorOf(path));
  place?.closest("details")?.setAttribute("open", "");
  place?.scrollIntoView({ block: "center" });
  const input = place?.matches(INPUTS) ? place : place?.querySelector<HTMLElement>(INPUTS);
  if (input instanceof HTMLElement) input.focus({ preventScroll: true });
}
