import { useEffect, useState } from "preact/hooks";
import { ApiError, api } from "../../../state/api.ts";

export interface Fetched<T> {
  /** the last that came; it stays until the next is there */
  readonly data: T | null;
  /** the path that it came from */
  readonly from: string | null;
  readonly busy: boolean;
  readonly problem: ApiError | null;
}

/** How long a search's answer may take: its chances and near misses are worked out when they are asked for [ms]. */
const SEARCH_PATIENCE = 120_000;

/** Reads a path of the API; the old answer stays until the new one is there, a request for another path is given up. */
export function useFetched<T>(path: string | null): Fetched<T> {
  const [state, setState] = useState<Omit<Fetched<T>, "busy">>({ data: null, from: null, problem: null });
  useEffect(() => {
    if (path === null) return;
    const asking = new AbortController();
    const { signal } = asking;
    const receive = (next: Partial<Fetched<T>>) => {
      if (!signal.aborted) setState((before) => ({ ...before, problem: null, ...next }));
    };
    api.get<T>(path, { signal, patience: SEARCH_PATIENCE }).then(
      (data) => receive({ data, from: path }),
      (error: unknown) => {
        if (!(error instanceof ApiError)) throw error;
        receive({ problem: error, from: path });
      },
    );
    return () => asking.abort();
  }, [path]);
  return { ...state, busy: path !== null && state.from !== path };
}
