import { useEffect, useMemo, useRef } from "preact/hooks";
import type { TestKind } from "../../../../shared/model/tests/index.ts";
import { go, href, route } from "../../../app/router.ts";
import { currentBook } from "../../../state/book.ts";
import { Answer } from "../../../ui/Answer.tsx";
import { KIND_FIELDS } from "../forms/kindFields.ts";
import { CommonFields } from "../forms/Sections.tsx";
import { KIND_ORDER, KINDS } from "../record/kinds.ts";
import type { ReadDraft } from "../record/readDraft.ts";
import { RunningPanel } from "../running/RunningPanel.tsx";
import { useRunning } from "../running/useRunning.ts";
import { ColumnMapper } from "./ColumnMapper.tsx";
import { countInWords } from "./countWords.ts";
import { KindPicker } from "./KindPicker.tsx";
import { createImport, type ImportModel } from "./model.ts";
import { Preview } from "./Preview.tsx";
import { SaveImport } from "./SaveImport.tsx";
import { SourcePicker } from "./SourcePicker.tsx";
import type { Source } from "./source.ts";
import { Trouble } from "./Trouble.tsx";
import { otherKind, takeIn } from "./takeIn.ts";
import { WhichLines } from "./WhichLines.tsx";

function sentenceOf(model: ImportModel): string {
  if (!model.table.value) return `Import a ${KINDS[model.kind].name.toLowerCase()} from CSV`;
  const missing = model.missing.value[0];
  return missing ?? countInWords(model.points.value);
}

function newImport(kind: TestKind, source: Source | null): ImportModel {
  const book = currentBook.peek();
  if (!book) throw new Error("An import needs the bench book.");
  const model = createImport(book, new Date(), kind);
  if (source) void takeIn(model, source);
  return model;
}

/** A test of any kind from a CSV file, as the address says; a file that says itself what it is counts more. */
export default function ImportView() {
  const wanted = route.value.query.get("kind");
  const kind = KIND_ORDER.find((known) => known === wanted) ?? "curve";
  const handedOn = useRef<Source | null>(null);
  const change = (next: TestKind, source: Source | null) => {
    handedOn.current = source;
    go(href("bench", "import", { kind: next }), { replace: true });
  };
  return <ImportOf key={kind} kind={kind} source={handedOn.current} onKind={change} />;
}

interface ImportOfProps {
  readonly kind: TestKind;
  /** what was given under another kind */
  readonly source: Source | null;
  readonly onKind: (kind: TestKind, source: Source | null) => void;
}

/** @returns the first of its tests, as far as it can be read; null while there is none */
function firstRead({ forms, points }: ImportModel): ReadDraft | null {
  const [first] = forms.value;
  return first && points.value.good.length > 0 ? first.read.value : null;
}

/** The text, what its columns are, a preview, what the test asks, and the result so far. */
function ImportOf({ kind, source, onKind }: ImportOfProps) {
  // what was handed on counts once, when the kind changes
  const model = useMemo(() => newImport(kind, source), [kind]);
  useEffect(() => model.stop, [model]);
  const other = otherKind(model);
  useEffect(() => {
    if (other) onKind(other, model.source.value);
  }, [other]);
  const running = useRunning(firstRead(model));
  const Own = KIND_FIELDS[kind];
  return (
    <div class="bench-import">
      <Answer sentence={sentenceOf(model)}>
        {model.table.value ? (
          "Look at the columns and the preview, say what was tested, then save."
        ) : (
          <>
            One line a {KINDS[kind].row}, a header above. <a href={href("bench")}>Back to the list</a>
          </>
        )}
      </Answer>
      <KindPicker kind={kind} onChange={(next) => onKind(next, unsaid(model))} />
      <SourcePicker model={model} />
      {model.table.value && (
        <>
          <div class="bench-form-columns">
            <div class="bench-form-main">
              <Trouble model={model} table={model.table.value} />
              <ColumnMapper model={model} table={model.table.value} />
              <WhichLines model={model} table={model.table.value} />
              <Preview model={model} table={model.table.value} />
              <h2>The test</h2>
              <Own form={model.form} />
              <CommonFields form={model.form} />
            </div>
            <RunningPanel running={running} row={model.form.spec.row} />
          </div>
          <SaveImport model={model} />
        </>
      )}
    </div>
  );
}

/** @returns the text that is in, to be read as another kind; null where it says itself which kind it is */
function unsaid({ source, table }: ImportModel): Source | null {
  return table.value?.head.kind === undefined ? source.value : null;
}
