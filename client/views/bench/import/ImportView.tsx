import { useMemo } from "preact/hooks";
import { href } from "../../../app/router.ts";
import { bench } from "../../../state/bench.ts";
import { Answer } from "../../../ui/Answer.tsx";
import { CurveFields } from "../forms/curve.tsx";
import { CommonFields } from "../forms/Sections.tsx";
import { RunningPanel } from "../running/RunningPanel.tsx";
import { NOTHING_YET } from "../running/result.ts";
import { runningResult } from "../running/run.ts";
import { ColumnMapper } from "./ColumnMapper.tsx";
import { createImport, type ImportModel } from "./model.ts";
import { Preview } from "./Preview.tsx";
import { countInWords } from "./points.ts";
import { SaveImport } from "./SaveImport.tsx";
import { SourcePicker } from "./SourcePicker.tsx";

function sentenceOf(model: ImportModel): string {
  if (!model.table.value) return "Import a curve test from CSV";
  const missing = model.missing.value[0];
  return missing ?? countInWords(model.points.value);
}

function newImport(): ImportModel {
  const book = bench.peek();
  if (!book) throw new Error("An import needs the bench book.");
  return createImport(book, new Date());
}

/** A curve test from a CSV file: the text, what its columns are, a preview, the rotor, and the result so far. */
export function ImportView() {
  const model = useMemo(newImport, []);
  const [first] = model.forms.value;
  const book = bench.value;
  const running = useMemo(
    () =>
      first && book && model.points.value.good.length > 0
        ? runningResult(first.read.value, book)
        : NOTHING_YET,
    [first, book, model.points.value],
  );
  return (
    <div class="bench-import">
      <Answer sentence={sentenceOf(model)}>
        {model.table.value ? (
          "Look at the columns and the preview, choose the rotor, then save."
        ) : (
          <>
            One line a point, a header above. <a href={href("bench")}>Back to the list</a>
          </>
        )}
      </Answer>
      <SourcePicker model={model} />
      {model.table.value && (
        <>
          <div class="bench-form-columns">
            <div class="bench-form-main">
              <ColumnMapper model={model} table={model.table.value} />
              <Preview model={model} table={model.table.value} />
              <h2>The test</h2>
              <CurveFields form={model.form} />
              <CommonFields form={model.form} />
            </div>
            <RunningPanel running={running} />
          </div>
          <SaveImport model={model} />
        </>
      )}
    </div>
  );
}
