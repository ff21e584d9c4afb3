import { useMemo } from "preact/hooks";
import type { StoredOf } from "../../../../shared/model/record.ts";
import { formatFixed } from "../../../../shared/units/format.ts";
import { Brought } from "../Brought.tsx";
import { contributionLines } from "../share.ts";
import { strengthContributions } from "../strength/strength.ts";
import { strengthMissing } from "../strength/strengthSentence.ts";
import { testName } from "../typed.ts";
import type { FrictionGroup } from "./frictionData.ts";
import { frictionStrength } from "./frictionStrength.ts";

const degrees = (tilt: number) => `${formatFixed(tilt, 1)}°`;

function factsOf(group: FrictionGroup, tests: readonly StoredOf<"tests">[]) {
  const strength = frictionStrength(group);
  const brought = strengthContributions(strength, (mu, without) => mu / without - 1);
  return {
    missing: group.problem ?? strengthMissing(strength, degrees),
    brought: [...brought].flatMap(([test, contribution]) => {
      const id = group.slides.find((slide) => slide.test === test)?.testId;
      const stored = tests.find((each) => each.id === id);
      if (!stored) return [];
      const words = { one: "slide", figure: "μ", alone: brought.size === 1 };
      return [{ id: stored.id, title: testName(stored), lines: contributionLines(contribution, words) }];
    }),
  };
}

/** What is missing of one contact's friction, and what each test brought to it. */
export function FrictionMeaning({
  group,
  tests,
}: {
  group: FrictionGroup;
  tests: readonly StoredOf<"tests">[];
}) {
  const { missing, brought } = useMemo(() => factsOf(group, tests), [group, tests]);
  const whose = group.key === "wheels" ? "the wheels' friction" : `${group.title}'s friction`;
  return (
    <>
      <section>
        <h2>What is missing of {whose}</h2>
        <p>{missing}</p>
      </section>
      <Brought title="What each friction test brought" tests={brought} />
    </>
  );
}
