import { asOnPaper } from "../../charts/Still.tsx";

/** What only answers on the screen: nothing that it leads to comes along. */
const ON_SCREEN = "[data-on-screen], .next-test-head a, .visually-hidden, progress, script";

/** A state, or a part that style adds to an element: the element is looked for without it. */
const ADDED = /::[\w-]+|:(?:hover|active|disabled|focus-visible|focus-within|focus)(?![\w-])/g;

/** @returns whether a rule dresses something of the sheet, or what it stands in */
function dresses(selector: string, sheet: Element): boolean {
  const found = [...document.querySelectorAll(selector.replace(ADDED, ":not(_)"))];
  return found.some((element) => sheet.contains(element) || element.contains(sheet));
}

/** @returns the rules that dress the sheet, conditions kept */
function dressing(rules: CSSRuleList, sheet: Element): string {
  return [...rules]
    .map((rule) => {
      if (rule instanceof CSSStyleRule) return dresses(rule.selectorText, sheet) ? rule.cssText : "";
      if (rule instanceof CSSPageRule) return rule.cssText;
      if (!(rule instanceof CSSMediaRule)) return "";
      const inner = dressing(rule.cssRules, sheet);
      return inner && `@media ${rule.conditionText} {\n${inner}\n}`;
    })
    .filter(Boolean)
    .join("\n");
}

/** Links lead nowhere from a file, and buttons do nothing: their words stay. */
function unwired(copy: Element): void {
  for (const element of copy.querySelectorAll(ON_SCREEN)) element.remove();
  for (const element of copy.querySelectorAll("a, button")) {
    const words = document.createElement("span");
    words.className = element.className;
    words.title = element.matches(".mark") ? (element.getAttribute("aria-label") ?? "") : "";
    words.append(...element.childNodes);
    element.replaceWith(words);
  }
  for (const fold of copy.querySelectorAll("details")) fold.open = true;
}

/** @returns the sheet in what it stands in on the page, so that rules by place still find it */
function placed(sheet: Element, copy: Element): Element {
  let [inner, outer] = [copy, sheet.parentElement];
  while (outer && outer !== document.body) {
    const around = outer.cloneNode(false) as Element;
    around.append(inner);
    [inner, outer] = [around, outer.parentElement];
  }
  return inner;
}

/** @returns a text as markup writes it */
function written(text: string): string {
  const place = document.createElement("p");
  place.textContent = text;
  return place.innerHTML;
}

/** @returns a page that stands alone: words, pictures and style in one file, nothing fetched */
export function pageOf(sheet: Element, title: string): string {
  const copy = asOnPaper(() => sheet.cloneNode(true) as Element);
  unwired(copy);
  const style = [...document.styleSheets].map(({ cssRules }) => dressing(cssRules, sheet)).join("\n");
  return `<!doctype html>
<html lang="${document.documentElement.lang}">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${written(title)}</title>
<style>
${style}
</style>
</head>
<body>
${placed(sheet, copy).outerHTML}
</body>
</html>
`;
}
