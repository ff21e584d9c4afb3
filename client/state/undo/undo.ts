import type { Stored } from "../../../shared/model/record.ts";
import { ApiError, api } from "../api.ts";
import { drop, keep } from "../book.ts";
import { keepStacks, keyOf, type Step, stacks } from "./stack.ts";

const pathOf = ({ collection, id }: Step): string => `/${collection}/${encodeURIComponent(id)}`;

const CHANGED = "It was changed elsewhere since.";

/** The record as the server has it now, where it is still as this page left it. */
async function asLeft(step: Step): Promise<Stored<unknown>> {
  const record = await api.get<Stored<unknown>>(pathOf(step));
  if (record.revision !== stacks.peek().present[keyOf(step)]) throw new ApiError(412, "changed", CHANGED);
  return record;
}

/** Brings a record to the content that it had at a revision; null takes it away. @returns the revision that it has now */
async function bring(step: Step, to: number | null, from: number | null): Promise<number> {
  if (from === null) {
    const back = await api.post<Stored<unknown>>(`${pathOf(step)}/restore`, {});
    keep(step.collection, back);
    return back.revision;
  }
  const { revision } = await asLeft(step);
  if (to === null) {
    await api.remove(pathOf(step), revision);
    drop(step.collection, step.id);
    return revision;
  }
  const { items } = await api.get<{ items: readonly Stored<unknown>[] }>(`${pathOf(step)}/revisions`);
  const state = items.find((each) => each.revision === to);
  if (!state) throw new ApiError(404, "no-such-state", "What it said before is not kept.");
  const written = await api.put<Stored<unknown>>(pathOf(step), state.data, revision);
  keep(step.collection, written);
  return written.revision;
}

/** @returns what was done, as a sentence names it: "correction of Pane crawler" */
export function nameOfStep({ name, before, after }: Step): string {
  if (before === null) return `adding ${name}`;
  return after === null ? `deletion of ${name}` : `correction of ${name}`;
}

let busy = false;

async function move(from: "done" | "undone", to: "done" | "undone"): Promise<string | null> {
  const step = stacks.peek()[from].at(-1);
  if (!step || busy) return null;
  busy = true;
  const rest = () => stacks.peek()[from].slice(0, -1);
  const [wanted, now] = from === "done" ? [step.before, step.after] : [step.after, step.before];
  try {
    const revision = await bring(step, wanted, now);
    const { present } = stacks.peek();
    const moved = { [from]: rest(), [to]: [...stacks.peek()[to], step] };
    keepStacks({ ...stacks.peek(), ...moved, present: { ...present, [keyOf(step)]: revision } });
    return `${from === "done" ? "Undone" : "Done again"}: ${nameOfStep(step)}.`;
  } catch (error) {
    if (!(error instanceof ApiError)) throw error;
    // without an answer it may be tried again; what was refused would be refused for ever
    if (error.status !== 0) keepStacks({ ...stacks.peek(), [from]: rest() });
    return `The ${nameOfStep(step)} can't be ${from === "done" ? "undone" : "done again"}. ${error.message}`;
  } finally {
    busy = false;
  }
}

/** Takes back the last thing that was done on this page. @returns what came of it, in words; null where there is nothing */
export const undo = (): Promise<string | null> => move("done", "undone");

/** Does again what was undone last. @returns what came of it, in words; null where there is nothing */
export const redo = (): Promise<string | null> => move("undone", "done");
