import { Mark } from "#client/ui/Mark.tsx";
import { Subscripts } from "#client/ui/Subscripts.tsx";
import { Sure } from "#client/ui/Sure.tsx";
import { Term } from "#client/ui/Term.tsx";
import { Terms } from "#client/ui/Terms.tsx";
import { MARK_MEANINGS, TERMS } from "#shared/book/glossary.ts";
import type { Shown } from "./shown.ts";

const keysOf = <K extends string>(of: Readonly<Record<K, string>>) => Object.keys(of) as K[];

/** Words that explain themselves. */
export const WORDS: readonly Shown[] = [
  ...keysOf(MARK_MEANINGS).map((word) => ({ component: "Mark", state: word, drawn: <Mark word={word} /> })),
  ...keysOf(TERMS).map((of) => ({ component: "Term", state: of, drawn: <Term of={of} /> })),
  {
    component: "Subscripts",
    state: "in a sentence",
    drawn: <Subscripts text="The propeller has C_T 0.131 and C_P 0.064." />,
  },
  { component: "Terms", state: "explained in a line", drawn: <Terms text="ψ with no flow, K_v and C_T" /> },
  {
    component: "Sure",
    state: "sampled",
    drawn: <Sure angle={128} state="driving" spread={{ p5: 1.21, p50: 1.4, p95: 1.62, holds: 0.99 }} />,
  },
  {
    component: "Sure",
    state: "no pull needed in some samples",
    drawn: <Sure angle={20} state="driving" spread={{ p5: null, p50: null, p95: null, holds: 1 }} />,
  },
];
