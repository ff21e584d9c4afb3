import { signal } from "@preact/signals";

export interface Saying {
  readonly key: number;
  readonly text: string;
}

/** Long enough for a screen reader to pick it up; gone before its reader comes by again [ms]. */
const STAYS = 3000;
let count = 0;

/** What the page says to who can't see it change, the newest last. */
export const sayings = signal<readonly Saying[]>([]);

/** Says something once, politely: after what is being read. */
export function say(text: string): void {
  const saying = { key: ++count, text };
  sayings.value = [...sayings.value, saying];
  setTimeout(() => {
    sayings.value = sayings.value.filter((each) => each !== saying);
  }, STAYS);
}
