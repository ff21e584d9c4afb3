import { groupOf, SCREEN_GROUPS, type Screen, type ScreenGroup } from "../../shared/model/screens.ts";
import { showsBuild } from "../state/build.ts";
import { BuildPicker } from "./BuildPicker.tsx";
import { BuildStanding } from "./BuildStanding.tsx";
import { MarkOfOurs } from "./MarkOfOurs.tsx";
import { href, route, type ViewName } from "./router.ts";
import { VIEWS } from "./views.ts";

const GROUP_LABELS: Readonly<Record<ScreenGroup, string>> = { book: "Book", build: "Build", find: "Find" };
const GROUPS = Object.entries(SCREEN_GROUPS) as [ScreenGroup, readonly Screen[]][];

/** From one view of a build to another, the build and what is tried go along. */
function addressOf(view: ViewName): string {
  const { view: shown, id, query } = route.value;
  return showsBuild(view) && showsBuild(shown) ? href(view, id, query) : href(view);
}

function shownGroup(): ScreenGroup | null {
  const { view } = route.value;
  return view === "missing" ? null : groupOf(view);
}

const isShown = (here: boolean) => (here ? "page" : undefined);

function ViewLinks({ views }: { views: readonly Screen[] }) {
  return (
    <span class="shell-links">
      {views.map((view) => (
        <a key={view} href={addressOf(view)} aria-current={isShown(view === route.value.view)}>
          {VIEWS[view].label}
        </a>
      ))}
    </span>
  );
}

/** The header: the name, and the views in three groups; the build's group says which build, and how it stands. */
export function Navigation() {
  const shown = shownGroup();
  return (
    <header class="shell-header">
      <a class="shell-brand" href={href("match")} aria-label="Gripcurve">
        <MarkOfOurs />
        <span class="shell-name">Gripcurve</span>
      </a>
      <nav class="shell-nav" aria-label="Views">
        {GROUPS.map(([group, views]) => (
          <span key={group} class={group === shown ? "shell-group shell-here" : "shell-group"}>
            {group === "build" && (
              <span class="shell-build">
                <BuildPicker />
                <BuildStanding />
              </span>
            )}
            <a class="shell-group-name" href={addressOf(views[0])}>
              {GROUP_LABELS[group]}
            </a>
            <ViewLinks views={views} />
          </span>
        ))}
      </nav>
    </header>
  );
}

/** On a phone the three groups stand under the thumb. */
export function Places() {
  const shown = shownGroup();
  return (
    <nav class="shell-places" aria-label="Places">
      {GROUPS.map(([group, views]) => (
        <a key={group} href={addressOf(views[0])} aria-current={group === shown ? "true" : undefined}>
          {GROUP_LABELS[group]}
        </a>
      ))}
    </nav>
  );
}
