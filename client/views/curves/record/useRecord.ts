import { useEffect, useState } from "preact/hooks";
import type { Book } from "../../../../shared/book/book.ts";
import type { TrackRecord } from "../../../../shared/model/api/record.ts";
import { ApiError, api } from "../../../state/api.ts";

export interface RecordState {
  /** null until it was read once */
  readonly record: TrackRecord | null;
  /** why it could not be read, in words */
  readonly problem: string | null;
}

/** Calibrating without each of some tests takes a while [ms]. */
const PATIENCE = 60_000;

const read = (signal: AbortSignal) => api.get<TrackRecord>("/record", { signal });

/** Reads the record until nothing is owed any more; the server waits for what is, up to a point. */
async function settled(signal: AbortSignal, show: (record: TrackRecord) => void): Promise<TrackRecord> {
  for (;;) {
    const record = await read(signal);
    show(record);
    if (record.owed === 0 || signal.aborted) return record;
  }
}

/** Reads the record, then has tests of before predicted, some at a time, until none is left. */
async function follow(signal: AbortSignal, show: (record: TrackRecord) => void): Promise<void> {
  let record = await settled(signal, show);
  while (record.missing > 0 && !signal.aborted) {
    const { missing } = record;
    await api.post("/record/predictions", undefined, { signal, patience: PATIENCE });
    record = await settled(signal, show);
    if (record.missing >= missing) return;
  }
}

/** @returns predicted against measured, read anew whenever the book changes; the last one stays meanwhile */
export function useRecord(book: Book): RecordState {
  const [state, setState] = useState<RecordState>({ record: null, problem: null });
  useEffect(() => {
    const gone = new AbortController();
    follow(gone.signal, (record) => {
      if (!gone.signal.aborted) setState({ record, problem: null });
    }).catch((error: unknown) => {
      if (!(error instanceof ApiError)) throw error;
      if (!gone.signal.aborted) setState((before) => ({ ...before, problem: error.message }));
    });
    return () => gone.abort();
  }, [book]);
  return state;
}
