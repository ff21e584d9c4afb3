import { useEffect, useState } from "preact/hooks";
import type { StoredOf } from "../../../../shared/model/record.ts";
import { href, navigate } from "../../../app/router.ts";
import { ApiError, api } from "../../../state/api.ts";
import { currentBook } from "../../../state/book.ts";
import { forgetDraft, keptDraft } from "../../../state/drafts.ts";
import { waitingFor } from "../../../state/waiting/list.ts";
import { Empty } from "../../../ui/Empty.tsx";
import { dayText } from "../../../ui/moment.ts";
import { Problem } from "../../../ui/Problem.tsx";
import { nameOf } from "../list/partNames.ts";
import { draftKind } from "../record/settledDraft.ts";
import { writeDraft } from "../record/writeDraft.ts";
import { createForm } from "./model.ts";
import { Revisions } from "./Revisions.tsx";
import { TestForm } from "./TestForm.tsx";
import { waitingForm } from "./waitingForm.ts";

type Stored = StoredOf<"tests">;

/** The test as the book on the screen has it, else asked of the server. */
function useTest(id: string): { readonly test: Stored | null; readonly failure: ApiError | null } {
  const known = currentBook.value?.tests.find((test) => test.id === id) ?? null;
  const [asked, setAsked] = useState<Stored | null>(null);
  const [failure, setFailure] = useState<ApiError | null>(null);
  const isKnown = known !== null;
  useEffect(() => {
    setAsked(null);
    setFailure(null);
    if (isKnown) return;
    api.get<Stored>(`/tests/${encodeURIComponent(id)}`).then(setAsked, (error: unknown) => {
      if (!(error instanceof ApiError)) throw error;
      setFailure(error);
    });
  }, [id, isKnown]);
  return { test: known ?? asked, failure };
}

/** A stored test: its readings can be corrected, what it said before stays readable below. */
export function CorrectTest({ id }: { readonly id: string }) {
  const { test, failure } = useTest(id);
  if (test) return <Correction key={id} test={test} />;
  if (failure?.status === 0) return <Problem message={failure.message} />;
  if (!failure) return <p class="quiet">Reading the test…</p>;
  return (
    <Empty title="There is no such test." action={{ label: "To the list of tests", href: href("bench") }}>
      <p>It was taken out, or its address is not complete.</p>
    </Empty>
  );
}

function formOf(test: Stored, startOver: boolean) {
  const item = waitingFor("tests", test.id);
  if (item) return waitingForm(item, startOver);
  const address = `tests/${test.id}`;
  if (startOver) forgetDraft(address);
  const kept = keptDraft(address, draftKind(test.data.kind));
  if (kept) return createForm(address, kept.content, kept.revision, kept);
  return createForm(address, writeDraft(test.data, currentBook.peek() ?? undefined), test.revision);
}

function Correction({ test }: { readonly test: Stored }) {
  const [form, setForm] = useState(() => formOf(test, false));
  return (
    <>
      <TestForm
        key={form.id}
        form={form}
        test={test}
        sentence={`${nameOf(test.data)}, ${dayText(test.data.date)}`}
        onSaved={(record) => navigate("bench", null, { saved: record.id })}
        onWaits={() => navigate("bench")}
        onDiscard={() => navigate("bench")}
        onStartOver={() => setForm(formOf(test, true))}
      />
      <Revisions id={test.id} revision={test.revision} />
    </>
  );
}
