/** The app's screens, each by the first part of its address. The server answers these addresses with the app, and no others. */
export const SCREENS = ["match", "bench", "curves", "attitudes", "run-down", "choose", "parts"] as const;

export type Screen = (typeof SCREENS)[number];
