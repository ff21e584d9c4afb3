import type { ComponentChildren } from "preact";

/** A hazard, short, where it matters. */
export function Caution({ children }: { children: ComponentChildren }) {
  return (
    <p class="caution" role="note">
      {children}
    </p>
  );
}
