/// <reference types="vite/client" />

/** The docs, by their path under docs/; each is read when it is first asked for, and travels inside the built bundle. */
const FILES = import.meta.glob<string>("../../docs/**/*.md", { query: "?raw", import: "default" });
const DRAWINGS = import.meta.glob<string>("../../docs/**/*.svg", { query: "?raw", import: "default" });
const PICTURES = import.meta.glob<string>("../../docs/**/*.webp", { query: "?inline", import: "default" });
const STYLE = import.meta.glob<string>("./docs.css", { query: "?raw", import: "default" });
const FOLDER = "../../docs/";

/** @returns paths of all docs: "accuracy.md", "method/air.md" */
export const docPaths = (): string[] =>
  Object.keys(FILES)
    .map((path) => path.slice(FOLDER.length))
    .sort();

/** @returns a doc's Markdown; null where there is none at that path */
export async function docText(path: string): Promise<string | null> {
  const file = `${FOLDER}${path}`;
  return Object.hasOwn(FILES, file) ? FILES[file]() : null;
}

/** @returns a drawing of the docs, SVG; null where there is none at that path */
export async function drawingAt(path: string): Promise<string | null> {
  const file = `${FOLDER}${path}`;
  return Object.hasOwn(DRAWINGS, file) ? DRAWINGS[file]() : null;
}

/** @returns a screenshot of the docs, WebP; null where there is none at that path */
export async function pictureAt(path: string): Promise<Buffer | null> {
  const file = `${FOLDER}${path}`;
  if (!Object.hasOwn(PICTURES, file)) return null;
  const url = await PICTURES[file]();
  return Buffer.from(url.slice(url.indexOf(",") + 1), "base64");
}

/** @returns the style sheet of the docs' pages */
export const docStyle = (): Promise<string> => STYLE["./docs.css"]();
