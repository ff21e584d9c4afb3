import { useMemo, useState } from "preact/hooks";
import { type FitStack, fitStacks, stackedParts } from "../../../shared/book/fitUp/fitStack.ts";
import type { Book } from "../../../shared/book/resolve.ts";
import type { Build } from "../../../shared/model/build.ts";
import type { StoredOf } from "../../../shared/model/record.ts";
import { STACK_KINDS, type StackKind, type StoredStack } from "../../../shared/model/stacks.ts";
import { withTried } from "../../state/partsTried.ts";
import { saveBuild } from "../../state/saveBuild.ts";
import { useOutcomes } from "../../state/useOutcomes.ts";
import { Answer } from "../../ui/Answer.tsx";
import { BuildOnScreen } from "../../ui/BuildOnScreen.tsx";
import type { Exchange } from "../../ui/partChoices.ts";
import { useSaid } from "../../ui/useSaid.ts";
import { VerdictLine } from "../../ui/verdict/VerdictLine.tsx";
import { fitFigures, fitSentence, KIND_WORDS } from "./fitWords.ts";
import { PrintAdvice } from "./PrintAdvice.tsx";
import { SectionChart } from "./SectionChart.tsx";
import { StackForm } from "./StackForm.tsx";
import { StackPanel } from "./StackPanel.tsx";
import { draftOfStack, readStack, type StackDraft, usualStack } from "./stackDraft.ts";
import { TryParts } from "./TryParts.tsx";

/** Do the parts close in the housing? Every stack of a build against its tolerances, drawn to scale. */
export default function FitUpView() {
  return <BuildOnScreen>{(book, build) => <FitOf key={build.id} book={book} build={build} />}</BuildOnScreen>;
}

interface OfBuild {
  readonly book: Book;
  readonly build: StoredOf<"builds">;
}

/** A stack that is typed, and whose place it takes; null: a new one. */
interface Typing {
  readonly draft: StackDraft;
  readonly at: number | null;
}

const othersOf = ({ stacks }: Build, at: number | null) => stacks.filter((_, i) => i !== at);

/** @returns the build with a stack in the place of another; null: behind the last */
function withStack(build: Build, stack: StoredStack, at: number | null): Build {
  const { stacks } = build;
  return {
    ...build,
    stacks: at === null ? [...stacks, stack] : stacks.map((each, i) => (i === at ? stack : each)),
  };
}

/** @returns the build as it would be with the stack that is typed, as soon as that can be read */
function withTyped(build: Build, typing: Typing | null): Build {
  const read = typing && readStack(typing.draft, othersOf(build, typing.at));
  return typing && read && "stack" in read ? withStack(build, read.stack, typing.at) : build;
}

function FitOf({ book, build }: OfBuild) {
  const [typing, setTyping] = useState<Typing | null>(null);
  const [exchange, setExchange] = useState<Exchange>({});
  const { tried, outcome } = useOutcomes(build);
  const shown = useMemo(
    () => ({ ...withTried(book, withTyped(build.data, typing), tried), ...exchange }),
    [book, build, typing, tried, exchange],
  );
  const fits = useMemo(() => fitStacks(book, shown), [book, shown]);
  const parts = useMemo(() => stackedParts(book, shown), [book, shown]);
  useSaid(fitSentence(fits));
  return (
    <div class="page page-halves">
      <div class="page-head">
        <VerdictLine build={build.id} target={outcome.build.targetMargin} />
        <Answer sentence={fitSentence(fits)}>{fitFigures(fits)}</Answer>
        {Object.keys(exchange).length > 0 && (
          <p class="small">With other parts, not as the build is stored.</p>
        )}
      </div>
      <section class="page-main" aria-label="The picture">
        <SectionChart name={shown.name} fits={fits} parts={parts} />
        <TryParts book={book} build={build} exchange={exchange} onExchange={setExchange} />
        <PrintAdvice book={book} build={build} fits={fits} />
        {typing === null && (
          <AddStack
            names={build.data.stacks.map(({ name }) => name)}
            onAdd={(draft) => setTyping({ draft, at: null })}
          />
        )}
      </section>
      <StacksSection
        build={build}
        fits={fits}
        gap={outcome.resolved?.gap.value ?? null}
        typing={typing}
        onTyping={setTyping}
      />
    </div>
  );
}

interface StacksProps {
  readonly build: StoredOf<"builds">;
  readonly fits: readonly FitStack[];
  readonly gap: number | null;
  readonly typing: Typing | null;
  readonly onTyping: (typing: Typing | null) => void;
}

/** Every stack in figures, and the ways to change them. */
function StacksSection({ build, fits, gap, typing, onTyping }: StacksProps) {
  const [problem, setProblem] = useState<string | null>(null);
  const { stacks } = build.data;
  const store = (data: Build) => saveBuild(build, data);
  return (
    <section class="page-main" aria-label="The stacks">
      <h2>Stacks</h2>
      {stacks.map((stack, at) =>
        fits[at] && typing?.at !== at ? (
          <StackPanel
            key={stack.name}
            fit={fits[at]}
            gap={gap}
            onEdit={() => onTyping({ draft: draftOfStack(stack), at })}
            onRemove={() => void store({ ...build.data, stacks: othersOf(build.data, at) }).then(setProblem)}
          />
        ) : null,
      )}
      {problem && (
        <p class="field-error" role="alert">
          {problem}
        </p>
      )}
      {typing && (
        <StackForm
          key={typing.at ?? "new"}
          title={typing.at === null ? "A new stack" : `Change “${stacks[typing.at]?.name ?? ""}”`}
          draft={typing.draft}
          others={othersOf(build.data, typing.at)}
          onDraft={(draft) => onTyping({ ...typing, draft })}
          onSave={async (stack) => {
            const refused = await store(withStack(build.data, stack, typing.at));
            if (refused === null) onTyping(null);
            return refused;
          }}
          onCancel={() => onTyping(null)}
        />
      )}
    </section>
  );
}

/** @returns a name that no stack has yet */
function freeName(name: string, taken: readonly string[]): string {
  if (!taken.includes(name)) return name;
  const next = taken.length + 1;
  return `${name}, ${next}`;
}

/** A stack of each kind, begun with what it is usually made of. */
function AddStack({
  names,
  onAdd,
}: {
  readonly names: readonly string[];
  readonly onAdd: (draft: StackDraft) => void;
}) {
  const add = (kind: StackKind) => onAdd(usualStack(kind, freeName(KIND_WORDS[kind], names)));
  return (
    <div data-next>
      <h2>Add a stack</h2>
      <p>The sizes that parts of the book have are filled in; the housing's own are yours to type.</p>
      <ul class="plain-list">
        {STACK_KINDS.map((kind) => (
          <li key={kind}>
            <button type="button" class="plain" onClick={() => add(kind)}>
              {KIND_WORDS[kind]}
            </button>
          </li>
        ))}
      </ul>
    </div>
  );
}
