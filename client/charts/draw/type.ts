/** Size of all text in charts [px]: nothing is smaller on the page. */
export const TYPE_SIZE = 13.5;
/** From one line of text to the next [px]. */
export const LINE_HEIGHT = 17;
/** From a line's middle to its baseline [px]. */
export const BASELINE = 4.5;

/** Mean advance of the page's sans type against its size, where nothing can be measured; wide enough for capitals and digits. */
const ADVANCE = 0.58;
/** Widths kept before they are forgotten: while a setting is dragged, labels change with every move. */
const MOST_KEPT = 2000;

const kept = new Map<string, number>();

/** The page's type, and what a reader's own style sheet puts between letters and words [CSS length]. */
interface PageType {
  readonly family: string;
  readonly letterSpacing: string;
  readonly wordSpacing: string;
}

let pen: CanvasRenderingContext2D | null | undefined;
/** Asked once for a size of the window: to ask styles while a setting is dragged lays the page out anew. */
let page: PageType | undefined;
let set: boolean | undefined;

function forgetPage(): void {
  page = undefined;
  set = undefined;
  kept.clear();
}

/** What measures text as the page sets it; null outside a browser. */
function measuring(): CanvasRenderingContext2D | null {
  if (pen !== undefined) return pen;
  if (typeof document === "undefined") return null;
  addEventListener("resize", forgetPage);
  pen = document.createElement("canvas").getContext("2d");
  return pen;
}

/** Spacing is set in parts of the type's size, which is another one in a chart. */
function pageType(): PageType {
  const { fontFamily, fontSize, letterSpacing, wordSpacing } = getComputedStyle(document.body);
  const here = (spacing: string) => `${((parseFloat(spacing) || 0) / parseFloat(fontSize)) * TYPE_SIZE}px`;
  return { family: fontFamily, letterSpacing: here(letterSpacing), wordSpacing: here(wordSpacing) };
}

function measured(text: string, strong: boolean): number {
  const context = measuring();
  if (!context) return text.length * ADVANCE * TYPE_SIZE * (strong ? 1.08 : 1);
  page ??= pageType();
  if (set !== strong) {
    context.font = `${strong ? 600 : 400} ${TYPE_SIZE}px ${page.family}`;
    context.letterSpacing = page.letterSpacing;
    context.wordSpacing = page.wordSpacing;
  }
  set = strong;
  return context.measureText(text).width;
}

/** @returns width of a line of a chart's text [px] */
export function textWidth(text: string, strong = false): number {
  const key = strong ? `!${text}` : text;
  const known = kept.get(key);
  if (known !== undefined) return known;
  if (kept.size >= MOST_KEPT) kept.clear();
  const width = measured(text, strong);
  kept.set(key, width);
  return width;
}

/** @returns a line of text cut so that it fits, what it ends with kept: "A long na…, 127°" */
export function clippedText(text: string, tail: string, room: number, strong = false): string {
  if (textWidth(text, strong) <= room) return text;
  let head = text.slice(0, text.length - tail.length);
  while (head.length > 1 && textWidth(`${head}…${tail}`, strong) > room) head = head.slice(0, -1);
  return `${head.replace(/[\s.,;:]+$/, "")}…${tail}`;
}
