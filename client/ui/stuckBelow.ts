const panels = new Set<HTMLElement>();

const isStuck = (panel: HTMLElement): boolean =>
  ["sticky", "fixed"].includes(getComputedStyle(panel).position);

function measure(): void {
  const heights = [...panels].filter(isStuck).map(({ offsetHeight }) => offsetHeight);
  document.documentElement.style.setProperty("--panel-bottom", `${Math.max(0, ...heights)}px`);
}

let sizes: ResizeObserver | undefined;

/**
 * The `ref` of a panel that sticks to the window's bottom, where the style sheet lets it: tells the style sheet its
 * height as `--panel-bottom`, so that what gets the focus is scrolled clear of it.
 */
export function stuckBelow(panel: HTMLElement | null): (() => void) | undefined {
  if (!panel) return;
  if (!sizes) {
    sizes = new ResizeObserver(measure);
    // Whether it sticks depends on the window, also where its own size doesn't.
    addEventListener("resize", measure);
  }
  panels.add(panel);
  sizes.observe(panel);
  return () => {
    panels.delete(panel);
    sizes?.unobserve(panel);
    measure();
  };
}
