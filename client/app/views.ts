import type { ComponentType } from "preact";
import type { ViewName } from "./router.ts";

export interface View {
  readonly name: ViewName;
  /** as the navigation says it */
  readonly label: string;
  /** false: reached from another view, not from the navigation */
  readonly listed: boolean;
  /** the view's own chunk; its default export is a component without properties that reads the route */
  readonly load: () => Promise<{ default: ComponentType }>;
}

/** Every view, in the navigation's order. A new view is one line here and one name in shared/model/screens.ts. */
export const VIEWS: readonly View[] = [
  { name: "bench", label: "Bench", listed: true, load: () => import("../views/bench/BenchView.tsx") },
  { name: "curves", label: "Curves", listed: true, load: () => import("../views/curves/CurvesView.tsx") },
  { name: "match", label: "Match", listed: true, load: () => import("../views/match/MatchView.tsx") },
  {
    name: "attitudes",
    label: "Attitudes",
    listed: true,
    load: () => import("../views/attitudes/AttitudesView.tsx"),
  },
  {
    name: "run-down",
    label: "Run-down",
    listed: true,
    load: () => import("../views/rundown/RundownView.tsx"),
  },
  { name: "choose", label: "Choose", listed: true, load: () => import("../views/choose/ChooseView.tsx") },
  {
    name: "parts",
    label: "Parts and builds",
    listed: false,
    load: () => import("../views/parts/PartsView.tsx"),
  },
  {
    name: "missing",
    label: "No such page",
    listed: false,
    load: () => import("../views/missing/MissingView.tsx"),
  },
];
