import { useMemo } from "preact/hooks";
import { formatFixed, withUnit } from "../../../../shared/units/format.ts";
import { decimalsOf, unitOf } from "../../../../shared/units/showing.ts";
import { ShowWorking } from "../../../ui/working/ShowWorking.tsx";
import { Brought } from "../Brought.tsx";
import { contributionLines } from "../share.ts";
import { strengthContributions } from "../strength/strength.ts";
import { strengthMissing } from "../strength/strengthSentence.ts";
import type { PullPage } from "./pullData.ts";
import { type ReducedPulls, reducedPulls } from "./pullReduced.ts";
import { pullBoard } from "./pullWorkings.ts";

/** In the unit shown, as the trials are. */
const loadText = (load: number) => withUnit(formatFixed(load, decimalsOf("load", 0)), unitOf("load"));

function broughtOf(page: PullPage, { strength }: ReducedPulls) {
  const brought = strengthContributions(strength, (mean, without) => Math.expm1(mean - without));
  return [...brought].map(([test, contribution]) => ({
    id: page.tests[test].id,
    title: page.tests[test].title,
    lines: contributionLines(contribution, {
      one: "pull",
      figure: "the median over the prediction",
      alone: brought.size === 1,
    }),
  }));
}

/** What is missing of the pulls, and what each pull test brought. */
export function PullMeaning({ page }: { page: PullPage }) {
  const facts = useMemo(() => {
    const pulls = reducedPulls(page);
    return pulls && { missing: strengthMissing(pulls.strength, loadText), brought: broughtOf(page, pulls) };
  }, [page]);
  if (!facts) return null;
  return (
    <>
      <section>
        <h2>What is missing of the pulls</h2>
        <p>{page.problem ?? facts.missing}</p>
        {page.ratio && <ShowWorking of={() => pullBoard(page)} />}
      </section>
      <Brought title="What each pull test brought" tests={facts.brought} />
    </>
  );
}
