import { useMemo } from "preact/hooks";
import { Brought, type BroughtTest } from "../Brought.tsx";
import { contributionLines } from "../share.ts";
import type { LeakPage } from "./leakData.ts";
import { leakContributions, leakMissing } from "./leakFacts.ts";
import { groupTitle } from "./leakPlot.ts";

function broughtOf(page: LeakPage, part: "skirt" | "surface"): BroughtTest[] {
  return page.groups.flatMap((group) => {
    const brought = leakContributions(group);
    return [...brought].map(([test, contribution]) => ({
      id: page.tests[test].id,
      title: page.tests[test].title,
      lines: [
        ...(page.groups.length > 1 ? [groupTitle(group, part)] : []),
        ...contributionLines(contribution, {
          one: "reading",
          figure: "the flow in the middle",
          alone: brought.size === 1,
        }),
      ],
    }));
  });
}

/** What is missing of the leak, and what each test brought to it. */
export function LeakMeaning({ page, part }: { page: LeakPage; part: "skirt" | "surface" }) {
  const missing = useMemo(
    () => page.groups.map((group) => ({ group, sentence: leakMissing(group) })),
    [page],
  );
  const brought = useMemo(() => broughtOf(page, part), [page, part]);
  return (
    <>
      <section>
        <h2>What is missing of the leak</h2>
        {missing.map(({ group, sentence }) => (
          <p key={group.key}>
            {page.groups.length > 1 && <span class="quiet">{groupTitle(group, part)}: </span>}
            {sentence}
          </p>
        ))}
      </section>
      <Brought title="What each leak test brought" tests={brought} />
    </>
  );
}
