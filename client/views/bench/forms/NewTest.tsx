import { useState } from "preact/hooks";
import type { TestKind } from "../../../../shared/model/tests/index.ts";
import { navigate, route } from "../../../app/router.ts";
import { currentBook } from "../../../state/book.ts";
import { forgetDraft, keptDraft } from "../../../state/drafts.ts";
import { waitingUnder } from "../../../state/waiting/list.ts";
import { KINDS } from "../record/kinds.ts";
import { draftKind } from "../record/settledDraft.ts";
import { dayOf, firstDraft } from "./defaults.ts";
import { createForm } from "./model.ts";
import { TestForm } from "./TestForm.tsx";
import { waitingForm } from "./waitingForm.ts";

const PART_KEYS = ["build", "rotor", "diameter", "motor", "pack", "skirt", "surface", "gear"] as const;

function newForm(kind: TestKind, waiting: string | null, startOver: boolean) {
  const item = waiting === null ? null : waitingUnder(waiting);
  if (item?.collection === "tests" && item.data.kind === kind) return waitingForm(item, startOver);
  const address = `tests/new/${kind}`;
  const { query } = route.peek();
  const parts = Object.fromEntries(
    PART_KEYS.flatMap((key) => (query.get(key) ? [[key, query.get(key) ?? ""]] : [])),
  );
  const book = currentBook.peek();
  if (startOver) forgetDraft(address);
  const kept = keptDraft(address, draftKind(kind));
  if (kept) return createForm(address, kept.content, null, kept);
  if (!book) throw new Error("A form needs the bench book.");
  const asked = { kind, today: dayOf(new Date()), buildId: query.get("build"), parts };
  return createForm(address, firstDraft(book, asked), null);
}

interface NewTestProps {
  readonly kind: TestKind;
  /** the key of one that waits for the server and is opened again; null for another */
  readonly waiting: string | null;
}

/** A new test, set up as the last one of its kind. */
export function NewTest({ kind, waiting }: NewTestProps) {
  const [form, setForm] = useState(() => newForm(kind, waiting, false));
  return (
    <TestForm
      key={form.id}
      form={form}
      test={null}
      sentence={`New ${KINDS[kind].name.toLowerCase()}`}
      onSaved={(record) => navigate("bench", null, { saved: record.id })}
      onWaits={() => navigate("bench")}
      onDiscard={() => navigate("bench")}
      onStartOver={() => setForm(newForm(kind, waiting, true))}
    />
  );
}
