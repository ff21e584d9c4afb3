import { asOnPaper } from "../../charts/Still.tsx";

/** Between the margins of the smaller of A4 and Letter, both ways [px]: 186 mm by 258 mm, less what rounding takes. */
const PAPER = { width: 703, height: 950 };
/** Smaller than this nobody reads it; what needs more runs on to another page. */
const SMALLEST = 0.66;

/** Rules of paper or of the screen alone, with the medium that each has now. */
function mediaRules(): { readonly rule: CSSMediaRule; readonly medium: string }[] {
  return [...document.styleSheets]
    .flatMap(({ cssRules }) => [...cssRules])
    .filter((rule) => rule instanceof CSSMediaRule)
    .filter(({ conditionText }) => /^(print|screen)/.test(conditionText))
    .map((rule) => ({ rule, medium: rule.media.mediaText }));
}

/** Does something while the page is laid out as it prints. */
function asPrinted<T>(act: () => T): T {
  const rules = mediaRules();
  for (const { rule, medium } of rules) rule.media.mediaText = medium.startsWith("print") ? "all" : "not all";
  try {
    return asOnPaper(act);
  } finally {
    for (const { rule, medium } of rules) rule.media.mediaText = medium;
  }
}

function heightOf(page: HTMLElement): number {
  const { width } = page.style;
  page.style.width = `${PAPER.width}px`;
  try {
    return page.getBoundingClientRect().height;
  } finally {
    page.style.width = width;
  }
}

/** Makes each page of a sheet as much smaller as its paper asks for. */
export function fitPaper(sheet: HTMLElement): void {
  const pages = [...sheet.querySelectorAll<HTMLElement>(".sheet-page")];
  for (const page of pages) page.style.removeProperty("--fit");
  const heights = asPrinted(() => pages.map(heightOf));
  for (const [i, page] of pages.entries()) {
    const fit = Math.min(1, Math.max(SMALLEST, PAPER.height / heights[i]));
    page.style.setProperty("--fit", fit.toFixed(3));
  }
}
