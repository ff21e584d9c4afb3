import { readdirSync, statSync } from "node:fs";
import supertest from "supertest";
import { describe, expect, it } from "vitest";
import { createApp } from "#server/app.ts";
import { docPaths, docText } from "#server/docs/files.ts";
import { escaped, rendered } from "#server/docs/render.ts";
import { MARK_MEANINGS, TERMS } from "#shared/book/glossary.ts";
import { TEST_KINDS } from "#shared/model/testKinds.ts";
import { freshStore, steppingClock } from "./support/book.ts";

const served = () => supertest(createApp({ store: freshStore(), clock: steppingClock() }));

const linksIn = (html: string): string[] => [...html.matchAll(/href="([^"]+)"/g)].map(([, to]) => to);
const anchorsIn = (html: string): string[] => [...html.matchAll(/ id="([^"]+)"/g)].map(([, id]) => id);

describe("the docs as pages", () => {
  it("are listed, and each is a page with one heading of the first order and a title of its own", async () => {
    const api = served();
    const { text } = await api.get("/docs").expect(200);
    const { text: fits } = await api.get("/docs/method/fits/").expect(200);
    expect(fits).toContain('href="/docs/method/fits/rotor.md"');
    expect(fits).not.toContain('href="/docs/api.md"');
    const paths = docPaths();
    expect(paths.length).toBeGreaterThan(30);
    const titles = new Set<string>();
    for (const path of paths) {
      expect(text).toContain(`href="/docs/${path}"`);
      const page = await api.get(`/docs/${path}`).expect(200);
      expect(page.headers["content-type"]).toMatch(/^text\/html/);
      expect(page.text.match(/<h1 /g), path).toHaveLength(1);
      titles.add(/<title>(.+)<\/title>/.exec(page.text)?.[1] ?? "");
    }
    expect(titles.size).toBe(paths.length);
  });

  it("link to one another: every link within them leads to a page, every anchor to a heading", async () => {
    const api = served();
    const pages = new Map<string, string>();
    for (const path of docPaths()) pages.set(`/docs/${path}`, (await api.get(`/docs/${path}`)).text);
    const dead = [...pages].flatMap(([from, html]) =>
      linksIn(html).flatMap((to) => {
        const { origin, pathname, hash } = new URL(to, `http://here${from}`);
        if (origin !== "http://here" || ["/", "/docs/", "/docs/docs.css"].includes(pathname)) return [];
        if (pathname.endsWith("/") && [...pages.keys()].some((path) => path.startsWith(pathname))) return [];
        const page = pages.get(pathname);
        const id = decodeURIComponent(hash.slice(1));
        return page !== undefined && (id === "" || anchorsIn(page).includes(id)) ? [] : [`${from}: ${to}`];
      }),
    );
    expect(dead).toEqual([]);
  });

  it("show a drawing of each rig that has a page, and nothing of it is fetched from elsewhere", async () => {
    const api = served();
    const rigs = docPaths().filter((path) => path.startsWith("rigs/"));
    expect(rigs.length).toBe(TEST_KINDS.length);
    for (const rig of rigs) {
      const [, source] = /<img src="([^"]+)"/.exec((await api.get(`/docs/${rig}`)).text) ?? [];
      const { pathname } = new URL(source ?? "", `http://here/docs/${rig}`);
      const { headers, body } = await api.get(pathname).expect(200);
      expect(headers["content-type"], pathname).toMatch(/^image\/svg/);
      expect(String(body), pathname).not.toMatch(/<script|href=|style=/);
    }
  });

  it("show pictures of the app that are served as what they are, and weigh little together", async () => {
    const api = served();
    const shown = new Set<string>();
    for (const path of docPaths()) {
      const { text } = await api.get(`/docs/${path}`);
      for (const [, source] of text.matchAll(/<img src="([^"]+\.webp)"/g))
        shown.add(new URL(source, `http://here/docs/${path}`).pathname);
    }
    expect(shown.size).toBeGreaterThan(2);
    for (const path of shown) {
      const { headers, body } = await api.get(path).expect(200);
      expect(headers["content-type"]).toBe("image/webp");
      expect((body as Buffer).subarray(8, 12).toString("latin1"), path).toBe("WEBP");
    }
    const bytes = readdirSync("docs/pictures").map((name) => statSync(`docs/pictures/${name}`).size);
    expect(bytes.reduce((sum, each) => sum + each, 0)).toBeLessThanOrEqual(200_000);
  });

  it("have the words, marks and symbols of the app's own glossary, to the letter", async () => {
    const page = rendered((await docText("glossary.md")) ?? "", "glossary.md").html;
    for (const [word, meaning] of Object.entries({ ...TERMS, ...MARK_MEANINGS })) {
      expect(page).toContain(`<td>${escaped(word)}</td>`);
      expect(page).toContain(meaning.replaceAll("'", "&#39;"));
    }
  });

  it("have a style sheet; what isn't there is a 404, and nothing can be written", async () => {
    const api = served();
    const { headers } = await api.get("/docs/docs.css").expect(200);
    expect(headers["content-type"]).toMatch(/^text\/css/);
    const { headers: led } = await api.get("/docs/method/restriction").expect(302);
    expect(led.location).toBe("/docs/method/restriction.md");
    for (const path of [
      "/docs/nothing.md",
      "/docs/../package.json",
      "/docs/%2e%2e/package.json",
      "/docs/method",
    ])
      await api.get(path).expect(404);
    await api.post("/docs/accuracy.md").expect(405);
  });
});

describe("a doc's Markdown", () => {
  it("that looks like HTML is shown as it stands, in text and in code", () => {
    const { html } = rendered("# A\n\n<script>x</script>\n\n`<b>`\n\n```\n<i>&\n```\n", "a.md");
    expect(html).not.toMatch(/<script>|<b>|<i>/);
    expect(html).toContain("&lt;script&gt;");
    expect(html).toContain("<code>&lt;b&gt;</code>");
    expect(html).toContain("&lt;i&gt;&amp;");
  });

  it("has headings that can be linked to, and tables that a keyboard reaches", () => {
    const { title, html } = rendered(
      `# \`ψ\`, and λ\n\n## What *was* there\n\n${"| a | b |\n| --- | --- |\n| 1 | 2 |\n\n".repeat(2)}`,
      "x",
    );
    expect(title).toBe("ψ, and λ");
    expect(html).toContain('<h2 id="what-was-there">What <em>was</em> there</h2>');
    expect(html).toContain('role="region" tabindex="0" aria-label="What was there: a, b"');
    expect(html).toContain('aria-label="What was there: a, b (2)"');
  });
});
