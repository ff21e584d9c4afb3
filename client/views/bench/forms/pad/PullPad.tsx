import { useEffect, useRef, useState } from "preact/hooks";
import { rigWeight } from "../../../../../shared/book/readings/pull.ts";
import type { PullTest } from "../../../../../shared/model/tests/pull.ts";
import { formatPlain, inUnit, withUnit } from "../../../../../shared/units/format.ts";
import { type TypedQuantity, toSI } from "../../../../../shared/units/quantity.ts";
import { isGood, type NumberSpec } from "../../../../../shared/units/readNumber.ts";
import { unitOf as unitShown } from "../../../../../shared/units/showing.ts";
import { Field } from "../../../../ui/Field.tsx";
import { keepFocus } from "../../../../ui/keepFocus.ts";
import { NumberInput } from "../../../../ui/NumberField.tsx";
import { Status } from "../../../../ui/Status.tsx";
import type { Draft } from "../../record/draft.ts";
import { cellNumber, quantityText } from "../../record/numbers.ts";
import { carriedOf } from "../../record/readDraft.ts";
import { RunningFigures } from "../../running/RunningPanel.tsx";
import type { Running } from "../../running/result.ts";
import { change, type FormModel, leaveCell, typeCell, unitOf } from "../model.ts";
import { type Loading, loadAfter, loadingOf, type Outcome, withLoad } from "./loading.ts";

export interface PadProps {
  readonly form: FormModel;
  readonly running: Running;
}

/** What a column of the pull's row takes. */
function numberOf({ spec, draft }: FormModel, key: "held" | "voltage"): NumberSpec {
  const column = spec.columns.find((each) => each.key === key);
  const number = column && cellNumber(spec.kind, column, draft.value.units[key]);
  if (!number) throw new Error(`A pull has no ${key}.`);
  return number;
}

/** More than a kitchen scale shows. */
const DIGITS = 5;

/** What hangs on the skirt by now, the rig counted as the direction of the pull asks. */
function totalWords(form: FormModel, held: TypedQuantity | null): string {
  const { rigMass, direction } = form.read.value.data as Partial<PullTest>;
  const loads = held ? toSI(held, "load") : 0;
  const said = (force: number) => withUnit(formatPlain(inUnit(force, "load"), DIGITS), unitShown("load"));
  if (!rigMass || !direction) return "the rig's mass is not given yet";
  const rig = rigWeight({ rigMass, direction } as PullTest);
  if (rig === 0) return "dragged along: the rig itself is no part of the load";
  const sign = rig > 0 ? "+" : "\u2212";
  return `${said(loads)} ${sign} rig ${said(Math.abs(rig))} = ${said(loads + rig)} on the surface`;
}

/** The taps of one pull after another, and the way back. */
function useLoading(form: FormModel) {
  const [step, setStep] = useState("");
  const [before, setBefore] = useState<readonly { readonly draft: Draft; readonly step: string }[]>([]);
  const [message, setMessage] = useState<string | undefined>();
  const spec = numberOf(form, "held");
  const carried = carriedOf(form.spec);
  const loading = loadingOf(form.draft.value, spec, carried);
  const after = step.trim() === "" ? null : loadAfter(loading, spec, step);
  const tap = (outcome: Outcome) => {
    if (!after) return setMessage("Type the load that you add first, for example “50 g”.");
    if (!isGood(after)) return setMessage(after.message);
    setBefore([...before, { draft: form.draft.value, step }]);
    change(form, withLoad(form.draft.value, loading, after, outcome, carried));
    if (outcome === "letGo") setStep("");
    return setMessage(undefined);
  };
  const takeBack = () => {
    const last = before.at(-1);
    if (!last) return;
    setBefore(before.slice(0, -1));
    change(form, last.draft);
    setStep(last.step);
  };
  const type = (text: string) => {
    setStep(text);
    setMessage(undefined);
  };
  const next = after && isGood(after) ? after : null;
  return { step, type, spec, loading, next, message, tap, takeBack: before.length > 0 ? takeBack : null };
}

/** A pull test with one thumb: a load is typed once, then "held" or "let go" is tapped as the same again is added. */
export function PullPad({ form, running }: PadProps) {
  const { step, type, spec, loading, next, message, tap, takeBack } = useLoading(form);
  const input = useRef<HTMLDivElement>(null);
  // a whole pull is saved by Enter, as any form is
  const isWhole = step.trim() === "" && loading.row === null;
  const onEnter = (act: () => void) => (event: KeyboardEvent) => {
    if (event.key !== "Enter" || event.isComposing || event.ctrlKey || event.metaKey || isWhole) return;
    event.preventDefault();
    act();
  };
  const focusLoad = () => input.current?.querySelector("input")?.focus({ preventScroll: true });
  useEffect(focusLoad, []);
  const at = next ? ` at ${quantityText(next)}` : "";
  return (
    <section class="bench-pad" aria-label={`Pull ${loading.number}`}>
      <RunningFigures running={running} />
      <Status class="bench-pad-total" first="silent">
        <strong>
          Pull {loading.number}: {loading.held ? `${quantityText(loading.held)} held` : "no load yet"}
        </strong>
        <span class="quiet">{totalWords(form, loading.held)}</span>
      </Status>
      <div class="bench-pad-fields" ref={input}>
        <Field label="Load added" error={message}>
          {(wired) => (
            <NumberInput
              spec={spec}
              digits
              input={wired}
              text={step}
              placeholder={unitOf(form, "held", "load")}
              onText={type}
              onKeyDown={onEnter(() => tap("held"))}
            />
          )}
        </Field>
        <PadVoltage form={form} loading={loading} onKeyDown={onEnter(focusLoad)} />
      </div>
      <div class="bench-pad-buttons">
        <button type="button" onMouseDown={keepFocus} onClick={() => tap("held")}>
          Held{at}
        </button>
        <button type="button" onMouseDown={keepFocus} onClick={() => tap("letGo")}>
          Let go{at}
        </button>
      </div>
      {takeBack && (
        <button type="button" class="plain" onMouseDown={keepFocus} onClick={takeBack}>
          Take the last one back
        </button>
      )}
    </section>
  );
}

interface PadVoltageProps extends Pick<PadProps, "form"> {
  readonly loading: Loading;
  readonly onKeyDown: (event: KeyboardEvent) => void;
}

/** The pack's voltage in the pull that is being loaded, or in the one that just let go. */
function PadVoltage({ form, loading, onKeyDown }: PadVoltageProps) {
  const row = loading.row ?? form.draft.value.rows.at(-1);
  if (!row) return null;
  const spec = numberOf(form, "voltage");
  const error = form.shown.value.get(`rows.${row.key}.voltage`);
  const number = loading.row ? loading.number : loading.number - 1;
  return (
    <Field label={`Voltage, pull ${number}`} error={error}>
      {(wired) => (
        <NumberInput
          spec={spec}
          digits
          input={wired}
          text={row.cells.voltage ?? ""}
          placeholder={unitOf(form, "voltage", "voltage")}
          onText={(text) => typeCell(form, row.key, "voltage", text)}
          onLeave={() => leaveCell(form, row.key, "voltage", spec)}
          onKeyDown={onKeyDown}
        />
      )}
    </Field>
  );
}
