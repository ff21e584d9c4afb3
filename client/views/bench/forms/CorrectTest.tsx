import { useEffect, useMemo, useState } from "preact/hooks";
import type { StoredOf } from "../../../../shared/model/record.ts";
import { href, navigate } from "../../../app/router.ts";
import { ApiError, api } from "../../../state/api.ts";
import { currentBook } from "../../../state/book.ts";
import { Empty } from "../../../ui/Empty.tsx";
import { nameOf } from "../list/words.ts";
import { writeDraft } from "../record/writeDraft.ts";
import { keptDraft } from "./kept.ts";
import { createForm } from "./model.ts";
import { Revisions } from "./Revisions.tsx";
import { TestForm } from "./TestForm.tsx";

type Stored = StoredOf<"tests">;

/** The test as the book on the screen has it, else asked of the server. */
function useTest(id: string): { readonly test: Stored | null; readonly gone: boolean } {
  const known = currentBook.value?.tests.find((test) => test.id === id) ?? null;
  const [asked, setAsked] = useState<Stored | null>(null);
  const [gone, setGone] = useState(false);
  const isKnown = known !== null;
  useEffect(() => {
    setAsked(null);
    setGone(false);
    if (isKnown) return;
    api.get<Stored>(`/tests/${encodeURIComponent(id)}`).then(setAsked, (error: unknown) => {
      if (!(error instanceof ApiError)) throw error;
      setGone(true);
    });
  }, [id, isKnown]);
  return { test: known ?? asked, gone };
}

/** A stored test: its readings can be corrected, what it said before stays readable below. */
export function CorrectTest({ id }: { readonly id: string }) {
  const { test, gone } = useTest(id);
  if (test) return <Correction key={id} test={test} />;
  if (!gone) return <p class="quiet">Reading the test…</p>;
  return (
    <Empty title="There is no such test." action={{ label: "To the list of tests", href: href("bench") }}>
      <p>It was taken out, or its address is not complete.</p>
    </Empty>
  );
}

function Correction({ test }: { readonly test: Stored }) {
  const form = useMemo(() => {
    const kept = keptDraft(test.id);
    if (kept?.draft.kind === test.data.kind) return createForm(test.id, kept.draft, kept.revision);
    return createForm(test.id, writeDraft(test.data), test.revision);
  }, [test.id]);
  return (
    <>
      <TestForm
        form={form}
        test={test}
        sentence={`${nameOf(test.data)}, ${test.data.date}`}
        onSaved={(record) => navigate("bench", null, { saved: record.id })}
        onDiscard={() => navigate("bench")}
      />
      <Revisions id={test.id} revision={test.revision} />
    </>
  );
}
