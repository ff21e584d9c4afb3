import type { z } from "zod";

/** Refuses a name that another entry of the list has already: pieces of one kind are one entry, with their quantity. */
export function namedOnce(list: readonly { readonly name?: string }[], context: z.RefinementCtx): void {
  const seen = new Map<string, number>();
  list.forEach(({ name }, i) => {
    if (name === undefined) return;
    const first = seen.get(name);
    if (first === undefined) seen.set(name, i);
    else
      context.addIssue({
        code: "custom",
        path: [i, "name"],
        message: `Read ${JSON.stringify(name)}, the name of entry ${first + 1} already; allowed: each name once, pieces of one kind by their quantity.`,
      });
  });
}
