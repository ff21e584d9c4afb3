import { resolve } from "node:path";
import type { Plugin } from "vite";
import { SCREENS, type Screen } from "../shared/model/screens.ts";

/** The list of what each screen starts with, beside the pages. */
const AHEAD = "ahead.json";

/** What the bundler wrote. */
type Files = Readonly<
  Record<string, { readonly type: "asset" } | { readonly type: "chunk"; readonly imports: readonly string[] }>
>;

/** What the bundler knows of a module: which modules it imports as it starts. */
interface Graph {
  readonly getModuleInfo: (id: string) => { readonly importedIds: readonly string[] } | null;
}

/** A module and all that it imports, directly or not. */
function closure(graph: Graph, start: string): ReadonlySet<string> {
  if (!graph.getModuleInfo(start)) throw new Error(`The client has no ${start}.`);
  const found = new Set([start]);
  for (const id of found)
    for (const imported of graph.getModuleInfo(id)?.importedIds ?? []) found.add(imported);
  return found;
}

/** Programs that stand by themselves: what they share with the pages is left to the bundler, or they would load a page's start. */
const APART = ["pair/main.tsx", "offline/serviceWorker.ts"];
const FIRST_VIEW = "views/match/MatchView.tsx";
/** Schemas check what forms and the server are given: with them every page would start a quarter heavier. */
const NOT_AT_START = "/node_modules/zod/";
/** The file of what it shares with others. */
const SHARED = "views";

/**
 * Which file of script a module goes to: what every page starts with is one file, what the first view shares with
 * others a second. Left to itself the bundler makes one for each set of views, some eighty of them for Match.
 *
 * @param root - folder of the client
 * @returns names a module's file; null leaves it to the bundler
 */
export function chunkOf(root: string): (id: string, graph: Graph) => string | null {
  const at = (file: string) => resolve(root, file);
  const own = at("views/match/");
  let known: Record<"apart" | "start" | "first", ReadonlySet<string>> | null = null;
  return (id, graph) => {
    known ??= {
      apart: new Set(APART.flatMap((program) => [...closure(graph, at(program))])),
      start: closure(graph, at("main.tsx")),
      first: closure(graph, at(FIRST_VIEW)),
    };
    if (known.start.has(id) && id.includes(NOT_AT_START))
      throw new Error(`Every page would start with ${id}.`);
    if (known.apart.has(id)) return null;
    if (known.start.has(id)) return "start";
    return known.first.has(id) && !id.startsWith(own) ? SHARED : null;
  };
}

/** The files that a chunk starts with, its own first. */
function startedWith(bundle: Files, fileName: string, found = new Set<string>()): ReadonlySet<string> {
  const file = bundle[fileName];
  if (found.has(fileName) || file?.type !== "chunk") return found;
  found.add(fileName);
  for (const imported of file.imports) startedWith(bundle, imported, found);
  return found;
}

/**
 * Writes down which files each screen starts with beyond what every page names, so that the server can have them
 * fetched while the page's start is.
 */
export function listAhead(): Plugin {
  return {
    name: "list-ahead",
    generateBundle(_options, bundle) {
      const chunks = Object.values(bundle).flatMap((file) => (file.type === "chunk" ? [file] : []));
      const every = new Set(
        chunks.flatMap(({ name, fileName }) => (name === "index" ? [...startedWith(bundle, fileName)] : [])),
      );
      const filesOf = (screen: Screen): [Screen, string[]] => {
        const folder = `/views/${screen.replace("-", "")}`;
        const isView = new RegExp(`${folder}/[A-Za-z]+View\\.tsx$`);
        const view = chunks.find(({ facadeModuleId: id }) => id && isView.test(id));
        if (!view) throw new Error(`The screen ${screen} has no view of its own in ${folder}.`);
        return [screen, [...startedWith(bundle, view.fileName)].filter((file) => !every.has(file))];
      };
      const source = JSON.stringify(Object.fromEntries(SCREENS.map(filesOf)));
      this.emitFile({ type: "asset", fileName: AHEAD, source });
    },
  };
}

/** Has the page fetch what its views share while it fetches what it starts with, not after that has run. */
export function sharedAhead(): Plugin {
  return {
    name: "shared-ahead",
    transformIndexHtml: {
      order: "post",
      handler: (_html, { filename, bundle = {} }) => {
        const shared = Object.values(bundle).find(({ name }) => name === SHARED);
        if (!shared || !filename.endsWith("index.html")) return [];
        const attrs = { rel: "modulepreload", crossorigin: true, href: `/${shared.fileName}` };
        return [{ tag: "link", attrs, injectTo: "head" }];
      },
    },
  };
}
