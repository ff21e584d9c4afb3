import type { ComponentType } from "preact";
import type { ViewName } from "./router.ts";

export interface View {
  /** as navigation and title say it */
  readonly label: string;
  /** the view's own chunk; its default export is a component without properties that reads the route */
  readonly load: () => Promise<{ default: ComponentType }>;
}

/** Every view. A new view is one line here and one name in shared/model/screens.ts, which holds the order. */
export const VIEWS: Readonly<Record<ViewName, View>> = {
  bench: { label: "Bench", load: () => import("../views/bench/BenchView.tsx") },
  parts: { label: "Parts", load: () => import("../views/parts/PartsView.tsx") },
  curves: { label: "Curves", load: () => import("../views/curves/CurvesView.tsx") },
  match: { label: "Match", load: () => import("../views/match/MatchView.tsx") },
  attitudes: { label: "Attitudes", load: () => import("../views/attitudes/AttitudesView.tsx") },
  "run-down": { label: "Run-down", load: () => import("../views/rundown/RundownView.tsx") },
  mass: { label: "Mass", load: () => import("../views/mass/MassView.tsx") },
  "fit-up": { label: "Fit-up", load: () => import("../views/fitup/FitUpView.tsx") },
  sheet: { label: "Sheet", load: () => import("../views/sheet/SheetView.tsx") },
  size: { label: "Size", load: () => import("../views/size/SizeView.tsx") },
  map: { label: "Map", load: () => import("../views/map/MapView.tsx") },
  choose: { label: "Choose", load: () => import("../views/choose/ChooseView.tsx") },
  compare: { label: "Compare", load: () => import("../views/compare/CompareView.tsx") },
  missing: { label: "No such page", load: () => import("../views/missing/MissingView.tsx") },
};
