import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { inSound } from "./acknowledged.ts";
import { isGone } from "./writers.ts";

/** What a server is in the middle of, beside its writers, when it is killed. */
export const MOMENTS = ["writes", "archive", "empty", "migration", "demo", "restore", "backup"] as const;
export type Moment = (typeof MOMENTS)[number];

/** Whether the whole book changes, or is copied, at a moment. */
export const isOfWhole = (moment: Moment): moment is Exclude<Moment, "writes" | "migration"> =>
  moment !== "writes" && moment !== "migration";

/** Between two changes of the whole book, so that writers get their turn [ms]. */
const REST = 100;

const api = (url: string, path: string, options: RequestInit = {}) => fetch(`${url}/api/v1${path}`, options);
const post = async (url: string, path: string, body?: string) => {
  const headers: HeadersInit = body === undefined ? {} : { "Content-Type": "application/json" };
  const answer = await api(url, path, { method: "POST", headers, body });
  await answer.arrayBuffer();
};

/** What happens to the whole book at a moment; `folder` is for what is downloaded. */
const WHOLE: Readonly<
  Record<Exclude<Moment, "writes" | "migration">, (url: string, folder: string) => Promise<void>>
> = {
  archive: async (url) => post(url, "/archive?replace=true", await (await api(url, "/archive")).text()),
  empty: (url) => post(url, "/bench/empty"),
  demo: async (url) => {
    await post(url, "/bench/empty");
    await post(url, "/bench/demo");
  },
  restore: async (url) => {
    const { items } = (await (await api(url, "/backups")).json()) as { items: { name: string }[] };
    if (items.length > 0) await post(url, `/backups/${items[0].name}/restore`);
  },
  backup: async (url, folder) => {
    const copy = join(folder, "download.db");
    writeFileSync(copy, Buffer.from(await (await api(url, "/backup")).arrayBuffer()));
    inSound(copy, () => null);
  },
};

/** Does it over and over until the server is gone; `done` is called each time. */
export async function changeUntilGone(
  moment: Moment,
  url: string,
  folder: string,
  done: () => void,
): Promise<void> {
  if (!isOfWhole(moment)) return;
  try {
    for (;;) {
      await WHOLE[moment](url, folder);
      done();
      await pause(REST);
    }
  } catch (error) {
    if (!isGone(error)) throw error;
  }
}
