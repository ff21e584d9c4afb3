import { escaped, type RenderedDoc } from "./render.ts";

/** @returns a whole page that shows some content of the docs */
export function docPage({ title, html }: RenderedDoc): string {
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escaped(title)} · Gripcurve</title>
<link rel="icon" href="data:,">
<link rel="stylesheet" href="/docs/docs.css">
</head>
<body>
<header><a href="/">Gripcurve</a><a href="/docs/">All pages</a></header>
<main>
${html}</main>
</body>
</html>
`;
}

/** One doc in the list of all. */
export interface Listed {
  readonly path: string;
  readonly title: string;
}

const GROUPS: readonly (readonly [title: string, folder: string])[] = [
  ["How to, and how far to trust it", ""],
  ["The rigs, one by one", "rigs/"],
  ["The method, page by page", "method/"],
  ["The fits", "method/fits/"],
];

const folderOf = (path: string): string => path.slice(0, path.lastIndexOf("/") + 1);

/** @returns a list of docs by their folders, as content of a page */
export function contents(docs: readonly Listed[]): RenderedDoc {
  const groups = GROUPS.map(([title, folder]) => {
    const own = docs.filter(({ path }) => folderOf(path) === folder);
    if (own.length === 0) return "";
    const items = own.map((doc) => `<li><a href="/docs/${doc.path}">${escaped(doc.title)}</a></li>`);
    return `<h2>${title}</h2>\n<ul>\n${items.join("\n")}\n</ul>\n`;
  });
  return { title: "Docs", html: `<h1>Docs</h1>\n${groups.join("")}` };
}
