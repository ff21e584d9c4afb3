import { signal } from "@preact/signals";
import { SCREENS, type Screen } from "../../shared/model/screens.ts";

/** A screen, or what stands where an address leads to none. */
export type ViewName = Screen | "missing";

export interface Route {
  readonly view: ViewName;
  /** what follows the view in the address, decoded: "new/curve", "rotors/b8", a build's id; null where nothing does */
  readonly id: string | null;
  readonly query: URLSearchParams;
}

type Query = Readonly<Record<string, string>> | URLSearchParams;

const FIRST_VIEW: ViewName = "match";

/** @returns the route that an address stands for; without a path the first view, with an unknown one the page that says so */
export function parseRoute(pathname: string, search = ""): Route {
  const [name = "", ...rest] = pathname.split("/").filter(Boolean);
  const view = SCREENS.find((candidate) => candidate === name);
  const query = new URLSearchParams(search);
  if (name === "") return { view: FIRST_VIEW, id: null, query };
  if (!view) return { view: "missing", id: [name, ...rest].map(decoded).join("/"), query };
  return { view, id: rest.length > 0 ? rest.map(decoded).join("/") : null, query };
}

/** A stray percent sign in an address stays as it was typed. */
function decoded(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch (error) {
    if (error instanceof URIError) return part;
    throw error;
  }
}

/** @returns the address of a view, for links */
export function href(view: ViewName, id: string | null = null, query: Query = {}): string {
  const path = id === null ? [] : id.split("/").filter(Boolean).map(encodeURIComponent);
  const search = new URLSearchParams(query).toString();
  return `/${[view, ...path].join("/")}${search === "" ? "" : `?${search}`}`;
}

/** Where the screen is. Read it in a component and it follows the address, once its view is there. */
export const route = signal<Route>(parseRoute("/"));

let arrive = (next: Route): void => {
  route.value = next;
};

/** Goes to where the address bar is. */
export function follow(): void {
  arrive(parseRoute(location.pathname, location.search));
}

/** Goes to an address inside the app; `replace` leaves no step in the history. */
export function go(address: string, { replace = false } = {}): void {
  if (replace) history.replaceState(null, "", address);
  else history.pushState(null, "", address);
  follow();
}

/** @returns a way to ask, later, whether the screen was not left for another since */
export function stayer(): () => boolean {
  const { pathname } = location;
  return () => location.pathname === pathname;
}

/** Goes to a view. */
export function navigate(view: ViewName, id: string | null = null, query: Query = {}): void {
  go(href(view, id, query));
}

function ownLink(event: MouseEvent): HTMLAnchorElement | null {
  if (event.defaultPrevented || event.button !== 0) return null;
  if (event.metaKey || event.ctrlKey || event.shiftKey || event.altKey) return null;
  if (!(event.target instanceof Element)) return null;
  const link = event.target.closest("a");
  if (!link || link.target || link.hasAttribute("download") || link.origin !== location.origin) return null;
  if (link.getAttribute("href")?.startsWith("#")) return null;
  return link.pathname !== "/" && parseRoute(link.pathname).view !== "missing" ? link : null;
}

/**
 * Starts following the address bar and the links of the page.
 *
 * @param show - brings a route onto the screen and sets {@link route} when it is there
 */
export function startRouter(show: (next: Route) => void): void {
  arrive = show;
  addEventListener("popstate", follow);
  document.addEventListener("click", (event) => {
    const link = ownLink(event);
    if (!link) return;
    event.preventDefault();
    go(link.pathname + link.search + link.hash);
  });
  follow();
}
