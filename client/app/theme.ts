import { signal } from "@preact/signals";
import { tried } from "../state/browserStore.ts";

export const THEMES = ["system", "light", "dark"] as const;
export type Theme = (typeof THEMES)[number];

const KEY = "gripcurve-theme";

/** Which colours the page wears; "system" follows the device. */
export const theme = signal<Theme>("system");

function wear(chosen: Theme): void {
  theme.value = chosen;
  if (chosen === "system") delete document.documentElement.dataset.theme;
  else document.documentElement.dataset.theme = chosen;
}

export function chooseTheme(chosen: Theme): void {
  wear(chosen);
  tried(() => localStorage.setItem(KEY, chosen), undefined);
}

/** Puts on what was chosen last time. */
export function startTheme(): void {
  const kept = tried(() => localStorage.getItem(KEY), null);
  wear(THEMES.find((each) => each === kept) ?? "system");
}
