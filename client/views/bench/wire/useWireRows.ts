import { useRef, useState } from "preact/hooks";
import { change, type FormModel } from "../forms/model.ts";
import { columnsOf } from "../record/kinds.ts";
import { carriedOf } from "../record/readDraft.ts";
import { keepMapping } from "./mappings.ts";
import { type RowTexts, RowWatch } from "./rowWatch.ts";
import { useWire } from "./useWire.ts";
import { wholeMapping } from "./wholeMapping.ts";
import { textsOf, type WireColumn, type WireMapping, withReading } from "./wireRows.ts";

/** An instrument's readings as rows of the test: each name mapped once, a row filled by hand or by itself. */
export function useWireRows(form: FormModel) {
  const [set, setMapping] = useState<WireMapping>({});
  const [byItself, setByItself] = useState(false);
  const rows = useRef(new RowWatch());
  const columns = columnsOf(form.spec, form.draft.value.fields).filter(({ dimension }) => dimension !== null);
  const put = (texts: RowTexts) => {
    if (Object.keys(texts).length === 0) return;
    change(form, withReading(form.draft.value, texts, carriedOf(form.spec)).draft);
  };
  const line = useWire((readings, now) => {
    if (!byItself) return;
    const mapping = wholeMapping(form, columns, [...now.values.keys()], set);
    const isPull = form.spec.kind === "pull";
    const texts = isPull ? rows.current.pull(readings, mapping) : rows.current.step(now, mapping);
    if (texts) put(texts);
  });
  const { values } = line.wire;
  const names = [...values.keys()];
  const mapping = wholeMapping(form, columns, names, set);
  const choose = (name: string, to: WireColumn) => {
    const next = { ...mapping, [name]: to };
    setMapping(next);
    keepMapping(form.spec.kind, names, next);
  };
  const putReading = () => put(textsOf(values, mapping));
  return { line, names, mapping, columns, choose, putReading, byItself, setByItself };
}
