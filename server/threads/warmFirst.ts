import { type Piscina, queueOptionsSymbol } from "piscina";
import type { TaskName } from "./tasks.ts";

type LoadBalancer = NonNullable<NonNullable<ConstructorParameters<typeof Piscina>[0]>["loadBalancer"]>;

/** Tasks whose first run in a thread takes ten times as long as a later one: there is much code to it, compiled as it runs. */
const LONG_AT_FIRST: ReadonlySet<TaskName> = new Set<TaskName>(["question"]);

/** Tasks that end sooner than such a first run would. */
const SHORT: ReadonlySet<TaskName> = new Set<TaskName>(["solve", "best"]);

/** What a thread has done, and what of it last. */
interface Past {
  readonly names: Set<TaskName>;
  last: TaskName;
}

/** @returns a task that says its name to {@link warmFirst} */
export const named = <T extends { readonly name: TaskName }>(task: T): T => ({
  ...task,
  [queueOptionsSymbol]: { name: task.name },
});

/**
 * Gives a task to a free thread that has done its like before, else to any that is free. What takes long at first
 * waits for a thread that has done it, where that one is busy with something short.
 */
export function warmFirst(): LoadBalancer {
  const pasts = new Map<number, Past>();
  return (task, threads) => {
    const { name } = task[queueOptionsSymbol] as { readonly name: TaskName };
    for (const id of pasts.keys()) if (threads.every((thread) => thread.id !== id)) pasts.delete(id);
    const free = threads.filter(({ currentUsage }) => currentUsage === 0);
    const warm = free.find(({ id }) => pasts.get(id)?.names.has(name));
    const isSoonWarm = [...pasts.values()].some(({ names, last }) => names.has(name) && SHORT.has(last));
    if (!warm && isSoonWarm && LONG_AT_FIRST.has(name)) return null;
    const thread = warm ?? free[0] ?? null;
    if (thread)
      pasts.set(thread.id, { names: (pasts.get(thread.id)?.names ?? new Set()).add(name), last: name });
    return thread;
  };
}
