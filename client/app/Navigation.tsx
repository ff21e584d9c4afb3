import { signal } from "@preact/signals";
import type { ComponentChildren } from "preact";
import { href, route } from "./router.ts";
import { VIEWS } from "./views.ts";

/** What the view on the screen puts at the right end of the header, such as its build picker. */
export const headerTools = signal<ComponentChildren>(null);

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
            href={href(view.name)}
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
