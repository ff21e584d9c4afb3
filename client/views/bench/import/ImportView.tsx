import { useMemo } from "preact/hooks";
import { href, route } from "../../../app/router.ts";
import { bench } from "../../../state/bench.ts";
import { Answer } from "../../../ui/Answer.tsx";
import { CurveFields } from "../forms/curve.tsx";
import { CommonFields } from "../forms/Sections.tsx";
import { ThrustFields } from "../forms/thrust.tsx";
import { KINDS } from "../record/kinds.ts";
import { RunningPanel } from "../running/RunningPanel.tsx";
import { NOTHING_YET } from "../running/result.ts";
import { runningResult } from "../running/run.ts";
import { ColumnMapper } from "./ColumnMapper.tsx";
import type { ImportKind } from "./mapping.ts";
import { createImport, type ImportModel } from "./model.ts";
import { Preview } from "./Preview.tsx";
import { countInWords } from "./points.ts";
import { SaveImport } from "./SaveImport.tsx";
import { SourcePicker } from "./SourcePicker.tsx";

function sentenceOf(model: ImportModel): string {
  if (!model.table.value) return `Import a ${nameOf(model.kind)} from CSV`;
  const missing = model.missing.value[0];
  return missing ?? countInWords(model.points.value);
}

const nameOf = (kind: ImportKind): string => KINDS[kind].name.toLowerCase();

function newImport(kind: ImportKind): ImportModel {
  const book = bench.peek();
  if (!book) throw new Error("An import needs the bench book.");
  return createImport(book, new Date(), kind);
}

/** A curve or thrust test from a CSV file, as the address says. */
export function ImportView() {
  const kind = route.value.query.get("kind") === "thrust" ? "thrust" : "curve";
  return <ImportOf key={kind} kind={kind} />;
}

/** The text, what its columns are, a preview, the rotor, and the result so far. */
function ImportOf({ kind }: { readonly kind: ImportKind }) {
  const model = useMemo(() => newImport(kind), [kind]);
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
          `Look at the columns and the preview, choose the ${kind === "curve" ? "rotor" : "propeller"}, then save.`
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
              {kind === "curve" ? <CurveFields form={model.form} /> : <ThrustFields form={model.form} />}
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
