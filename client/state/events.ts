import { signal } from "@preact/signals";
import type { ChangeEvent } from "../../shared/model/api/book.ts";
import { apply, reload } from "./book.ts";

/** false while the server cannot be heard */
export const connected = signal(true);

/** Listens to what is written in the book, here or on another screen; reads it anew after a break. */
export function startEvents(): void {
  const source = new EventSource("/api/v1/events");
  const hear = (event: MessageEvent<string>) => {
    void apply(JSON.parse(event.data) as ChangeEvent);
  };
  source.addEventListener("change", hear);
  source.addEventListener("message", hear);
  source.addEventListener("error", () => {
    connected.value = false;
  });
  source.addEventListener("open", () => {
    if (!connected.value) void reload();
    connected.value = true;
  });
}
