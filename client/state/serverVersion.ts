import { signal } from "@preact/signals";
import { ApiError, api } from "./api.ts";
import { version } from "./version.ts";

/** The server's version where it is another than this page's: it was changed while the page was open; else null. */
export const otherVersion = signal<string | null>(null);

/** Asks the server which version it is; asked whenever the connection stands anew. One that doesn't say keeps what was known. */
export async function askVersion(): Promise<void> {
  try {
    const served = (await api.get<{ readonly version: string }>("/health")).version;
    otherVersion.value = served === version ? null : served;
  } catch (error) {
    if (!(error instanceof ApiError)) throw error;
  }
}
