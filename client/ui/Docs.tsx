import type { ComponentChildren } from "preact";
import { href } from "../app/router.ts";

/** A way to one of the docs, which the server shows as pages. */
export function DocLink({ path, children }: { path: string; children: ComponentChildren }) {
  return <a href={`/docs/${path}`}>{children}</a>;
}

/** How far figures can be trusted: what they were held against, and how far they were off for this maker. */
export function HowFar() {
  return (
    <p class="quiet small">
      <DocLink path="accuracy.md">What the figures were held against</DocLink>, and{" "}
      <a href={href("curves", "record")}>how far predictions were off for you</a>.
    </p>
  );
}
