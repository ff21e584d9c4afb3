import { useEffect, useMemo, useRef, useState } from "preact/hooks";
import type { ChooseJob } from "../../../shared/model/api/choose.ts";
import { ApiError, api } from "../../state/api.ts";
import type {
  Combination,
  CombinationsPage,
  MissedAnswer,
  PointsAnswer,
  ShortlistAnswer,
} from "./answers.ts";
import type { Rank } from "./parts/Shortlist.tsx";
import { combinationsPath } from "./rows/useRows.ts";
import { type Fetched, useFetched } from "./state/fetched.ts";
import { jobPath } from "./state/job.ts";
import type { Shown } from "./state/shown.ts";

/** Points that are drawn at most. */
const POINTS = 4000;
/** Combinations whose uncertainty is worked out: each takes thousands of solves. */
const JUDGED = 10;

export interface Results {
  readonly points: Fetched<PointsAnswer>;
  readonly lightest: Combination | null;
  readonly best: Combination | null;
  /** the best of each kind where both were tried; null where none of it works */
  readonly kinds: Readonly<Record<"ducted" | "open", Combination | null>> | null;
  readonly shortlist: Fetched<ShortlistAnswer>;
  readonly missed: Fetched<MissedAnswer>;
  readonly looked: Combination | null;
  readonly pinned: readonly Combination[];
  /** the first refusal of all */
  readonly problem: ApiError | null;
}

/** Single combinations by their index; those that were read are kept as long as the job. */
function useCombinations(job: string, wanted: readonly number[]): (index: number) => Combination | null {
  const kept = useRef(new Map<string, Combination>());
  const [, redraw] = useState(0);
  const key = (index: number) => `${job} ${index}`;
  useEffect(() => {
    for (const index of wanted) {
      if (kept.current.has(key(index))) continue;
      api.get<Combination>(`${jobPath(job)}/set?index=${index}`).then(
        (combination) => {
          kept.current.set(key(index), combination);
          redraw((count) => count + 1);
        },
        (error: unknown) => {
          // A combination that the address names and the job has not is simply not shown.
          if (!(error instanceof ApiError)) throw error;
        },
      );
    }
  }, [job, wanted.join(",")]);
  return (index) => kept.current.get(key(index)) ?? null;
}

const MASS = { sort: "mass", order: "least", only: "admissible", kind: "any" } as const;
const MARGIN = { sort: "margin", order: "most", only: "admissible", kind: "any" } as const;

/** Everything that is shown of a job that is done. */
export function useResults(job: ChooseJob, shown: Shown, rank: Rank, bothKinds: boolean): Results {
  const path = jobPath(job.id);
  const some = job.admissible > 0;
  const points = useFetched<PointsAnswer>(`${path}/points?x=${shown.x}&y=${shown.y}&limit=${POINTS}`);
  const light = useFetched<CombinationsPage>(some ? combinationsPath(job.id, MASS, 0, 1) : null);
  const most = useFetched<CombinationsPage>(some ? combinationsPath(job.id, MARGIN, 0, 1) : null);
  const bestOf = (kind: "ducted" | "open") =>
    useFetched<CombinationsPage>(
      some && bothKinds ? combinationsPath(job.id, { ...MARGIN, kind }, 0, 1) : null,
    );
  const [ducted, open] = [bestOf("ducted"), bestOf("open")];
  const missed = useFetched<MissedAnswer>(`${path}/missed`);
  const shortlist = useFetched<ShortlistAnswer>(
    some ? `${path}/shortlist?count=${JUDGED}&rank=${rank}` : null,
  );
  const first = (page: Fetched<CombinationsPage>) => (some ? (page.data?.items[0] ?? null) : null);
  const best = first(most) ?? (some ? null : (missed.data?.nearest[0]?.set ?? null));
  const wanted = useMemo(
    () => [...shown.pins, ...(shown.look === null ? [] : [shown.look])],
    [shown.pins, shown.look],
  );
  const setAt = useCombinations(job.id, wanted);
  const all = [points, light, most, missed, shortlist, ducted, open];
  const both = some && bothKinds && ducted.data && open.data;
  return {
    points,
    lightest: first(light),
    best,
    kinds: both ? { ducted: first(ducted), open: first(open) } : null,
    shortlist,
    missed,
    looked: shown.look === null ? best : (setAt(shown.look) ?? best),
    pinned: shown.pins.flatMap((pin) => setAt(pin) ?? []),
    problem: all.find(({ problem }) => problem !== null)?.problem ?? null,
  };
}
