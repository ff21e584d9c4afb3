import { showsBuild } from "../state/build.ts";
import { headerTools } from "../state/headerTools.ts";
import { href, route, type ViewName } from "./router.ts";
import { VIEWS } from "./views.ts";

/** From one view of a build to another, the build and what is tried go along. */
function addressOf(view: ViewName): string {
  const { view: shown, id, query } = route.value;
  return showsBuild(view) && showsBuild(shown) ? href(view, id, query) : href(view);
}

/** The header: the name, the views, and the tools of the view on the screen. */
export function Navigation() {
  return (
    <header class="shell-header">
      <a class="shell-brand" href={href("match")}>
        Gripcurve
      </a>
      <nav class="shell-nav" aria-label="Views">
        {VIEWS.filter((view) => view.listed).map((view) => (
          <a
            key={view.name}
            href={addressOf(view.name)}
            aria-current={view.name === route.value.view ? "page" : undefined}
          >
            {view.label}
          </a>
        ))}
      </nav>
      <div class="shell-tools">{headerTools.value}</div>
    </header>
  );
}
