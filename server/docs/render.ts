import { Marked, Renderer, type Tokens } from "marked";

/** A doc as a page shows it. */
export interface RenderedDoc {
  /** its first heading, as plain text */
  readonly title: string;
  /** its content as HTML */
  readonly html: string;
}

const ESCAPES: Readonly<Record<string, string>> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;" };

/** @returns a text that HTML reads as text */
export const escaped = (text: string): string => text.replace(/[&<>"]/g, (sign) => ESCAPES[sign]);

const plain = (text: string): string => text.replace(/[`*]/g, "");

/** A heading's anchor, as the docs' own links name it: "What was never measured here" → what-was-never-measured-here. */
const anchorOf = (text: string): string =>
  plain(text)
    .toLowerCase()
    .replace(/[^\p{L}\p{N} _-]/gu, "")
    .trim()
    .replace(/ /g, "-");

/** Headings can be linked to, wide tables scroll by themselves, and what looks like HTML is shown as it stands: the docs hold none. */
class DocRenderer extends Renderer {
  /** the heading that what is rendered stands under */
  #under = "";
  readonly #labels = new Set<string>();

  override heading({ tokens, depth, text }: Tokens.Heading): string {
    this.#under = plain(text);
    return `<h${depth} id="${anchorOf(text)}">${this.parser.parseInline(tokens)}</h${depth}>\n`;
  }

  override table(token: Tokens.Table): string {
    const names = token.header.map(({ text }) => plain(text)).filter((text) => text !== "");
    const label = this.#unlike(`${this.#under}: ${names.join(", ") || "table"}`);
    return `<div class="scroll" role="region" tabindex="0" aria-label="${escaped(label)}">${super.table(token)}</div>\n`;
  }

  /** Regions of a page are told apart by their names. */
  #unlike(name: string): string {
    const label = this.#labels.has(name) ? `${name} (${this.#labels.size + 1})` : name;
    this.#labels.add(label);
    return label;
  }

  override code({ text }: Tokens.Code): string {
    return `<pre tabindex="0"><code>${escaped(text)}</code></pre>\n`;
  }

  override html({ text }: Tokens.HTML | Tokens.Tag): string {
    return escaped(text);
  }
}

/**
 * A doc's Markdown as HTML.
 *
 * @param markdown - of our own docs
 * @param path - of the doc, for a title where it has no heading
 */
export function rendered(markdown: string, path: string): RenderedDoc {
  const [, heading = path] = /^# (.+)$/m.exec(markdown) ?? [];
  const marked = new Marked();
  marked.setOptions({ gfm: true, renderer: new DocRenderer() });
  return { title: plain(heading), html: marked.parse(markdown, { async: false }) };
}
