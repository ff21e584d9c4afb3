import type { ComponentChildren } from "preact";

/** A table that may be wider or longer than its place: it scrolls there, also by keyboard. */
export function ScrollTable({ label, children }: { label: string; children: ComponentChildren }) {
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset is for form fields
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard
    <div class="data-table-scroll" role="group" aria-label={label} tabIndex={0}>
      {children}
    </div>
  );
}
