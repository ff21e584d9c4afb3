/**
 * The app's screens in the order of the navigation, each by the first part of its address, in the three groups that it
 * shows. The server answers these addresses with the app, and no others.
 */
export const SCREEN_GROUPS = {
  book: ["bench", "parts", "curves"],
  build: ["match", "attitudes", "run-down", "mass", "fit-up", "sheet"],
  find: ["size", "map", "choose", "compare"],
} as const;

export type ScreenGroup = keyof typeof SCREEN_GROUPS;
export type Screen = (typeof SCREEN_GROUPS)[ScreenGroup][number];

export const SCREENS: readonly Screen[] = Object.values(SCREEN_GROUPS).flat();

const groups = Object.entries(SCREEN_GROUPS) as [ScreenGroup, readonly Screen[]][];

/** @returns the group that a screen stands in */
export function groupOf(screen: Screen): ScreenGroup {
  const found = groups.find(([, screens]) => screens.includes(screen));
  if (!found) throw new Error(`No group has the screen ${screen}.`);
  return found[0];
}
