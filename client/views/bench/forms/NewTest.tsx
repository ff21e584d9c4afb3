import { useState } from "preact/hooks";
import type { TestKind } from "../../../../shared/model/tests/index.ts";
import { navigate, route } from "../../../app/router.ts";
import { currentBook } from "../../../state/book.ts";
import { forgetDraft, keptDraft } from "../../../state/drafts.ts";
import { isDraftOf } from "../record/draft.ts";
import { KINDS } from "../record/kinds.ts";
import { dayOf, firstDraft } from "./defaults.ts";
import { createForm } from "./model.ts";
import { TestForm } from "./TestForm.tsx";

const PART_KEYS = ["build", "rotor", "diameter", "motor", "pack", "skirt", "surface", "gear"] as const;

function newForm(kind: TestKind, startOver: boolean) {
  const address = `tests/new/${kind}`;
  const { query } = route.peek();
  const parts = Object.fromEntries(
    PART_KEYS.flatMap((key) => (query.get(key) ? [[key, query.get(key) ?? ""]] : [])),
  );
  const book = currentBook.peek();
  if (startOver) forgetDraft(address);
  const kept = keptDraft(address, isDraftOf(kind));
  if (kept) return createForm(address, kept.content, null, kept);
  if (!book) throw new Error("A form needs the bench book.");
  const asked = { kind, today: dayOf(new Date()), buildId: query.get("build"), parts };
  return createForm(address, firstDraft(book, asked), null);
}

/** A new test, set up as the last one of its kind. */
export function NewTest({ kind }: { readonly kind: TestKind }) {
  const [form, setForm] = useState(() => newForm(kind, false));
  return (
    <TestForm
      key={form.id}
      form={form}
      test={null}
      sentence={`New ${KINDS[kind].name.toLowerCase()}`}
      onSaved={(record) => navigate("bench", null, { saved: record.id })}
      onDiscard={() => navigate("bench")}
      onStartOver={() => setForm(newForm(kind, true))}
    />
  );
}
