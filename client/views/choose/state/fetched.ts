import { useEffect, useRef, useState } from "preact/hooks";
import { ApiError, api } from "../../../state/api.ts";

export interface Fetched<T> {
  /** the last that came; it stays until the next is there */
  readonly data: T | null;
  /** the path that it came from */
  readonly from: string | null;
  readonly busy: boolean;
  readonly problem: ApiError | null;
}

/** Reads a path of the API; the old answer stays until the new one is there, an answer that comes late is let go. */
export function useFetched<T>(path: string | null): Fetched<T> {
  const [state, setState] = useState<Omit<Fetched<T>, "busy">>({ data: null, from: null, problem: null });
  const asked = useRef<string | null>(null);
  useEffect(() => {
    asked.current = path;
    if (path === null) return;
    const take = (next: Partial<Fetched<T>>) => {
      if (asked.current === path) setState((before) => ({ ...before, problem: null, ...next }));
    };
    api.get<T>(path).then(
      (data) => take({ data, from: path }),
      (error: unknown) => {
        if (!(error instanceof ApiError)) throw error;
        take({ problem: error, from: path });
      },
    );
  }, [path]);
  return { ...state, busy: path !== null && state.from !== path };
}
