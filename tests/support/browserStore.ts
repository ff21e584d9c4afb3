import { afterAll, vi } from "vitest";

/** Gives a file of tests a browser's store of its own, from here on. */
export function useBrowserStore(): void {
  const kept = new Map<string, string>();
  vi.stubGlobal("localStorage", {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, text: string) => kept.set(key, text),
    removeItem: (key: string) => kept.delete(key),
  });
  afterAll(() => {
    vi.unstubAllGlobals();
  });
}
