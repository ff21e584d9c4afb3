import { signal } from "@preact/signals";
import type { ComponentChildren } from "preact";

/** What the view on the screen puts at the right end of the header, such as its build picker. */
export const headerTools = signal<ComponentChildren>(null);
