import { signal } from "@preact/signals";
import { atRest } from "../ui/atRest.ts";

/** Whether this browser keeps the pages, so that they open where no server answers. */
export const opensAlone = signal(false);

const SERVICE_WORKER = "/service-worker.js";

/** Has the browser keep the pages once this one has nothing else to do. Where it can't, they open from the server alone. */
export function keepPages(): void {
  if (!("serviceWorker" in navigator)) return;
  const { serviceWorker } = navigator;
  void serviceWorker.ready.then(() => {
    opensAlone.value = true;
  });
  atRest(async () => {
    try {
      await serviceWorker.register(SERVICE_WORKER, { updateViaCache: "none" });
    } catch (error) {
      // A browser that refuses, an address whose certificate it doesn't trust, or no server.
      if (!(error instanceof TypeError || error instanceof DOMException)) throw error;
    }
  });
}
