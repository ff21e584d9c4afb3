import type { ComponentChildren } from "preact";
import { useRef, useState } from "preact/hooks";
import type { StoredOf } from "../../../../shared/model/record.ts";
import { stayer } from "../../../app/router.ts";
import { notice } from "../../../state/notice.ts";
import { Answer } from "../../../ui/Answer.tsx";
import { AskBeforeSaving } from "../../../ui/AskBeforeSaving.tsx";
import { AsLeft } from "../../../ui/AsLeft.tsx";
import { useAboveKeyboard } from "../../../ui/aboveKeyboard.ts";
import { anchorOf } from "../../../ui/anchor.ts";
import { BusyButton } from "../../../ui/BusyButton.tsx";
import { keepFocus } from "../../../ui/keepFocus.ts";
import { Later, type LaterProps } from "../../../ui/Later.tsx";
import { stuckBelow } from "../../../ui/stuckBelow.ts";
import { NARROW, useMedia } from "../../../ui/useMedia.ts";
import { RunningPanel } from "../running/RunningPanel.tsx";
import { useRunning } from "../running/useRunning.ts";
import { ChangedMeanwhile } from "./ChangedMeanwhile.tsx";
import { ErrorSummary } from "./ErrorSummary.tsx";
import { KIND_FIELDS, KIND_PADS } from "./kindFields.ts";
import { type FormModel, forget } from "./model.ts";
import { RowTable } from "./RowTable.tsx";
import { CommonFields } from "./Sections.tsx";
import { STATUS_CHANGED, save } from "./save.ts";

interface TestFormProps {
  readonly form: FormModel;
  readonly sentence: string;
  /** the test that is corrected; null for a new one */
  readonly test: StoredOf<"tests"> | null;
  readonly onSaved: (record: StoredOf<"tests">) => void;
  /** it waits on this device, for the server */
  readonly onWaits: () => void;
  readonly onDiscard: () => void;
  readonly onStartOver: () => void;
}

/** Saves a test, and says what became of it: also to a maker who has left the form meanwhile. */
function useSending({ form, test, onSaved, onWaits }: TestFormProps, onRefused: () => void) {
  const [changed, setChanged] = useState(form.waiting?.refusal?.status === STATUS_CHANGED);
  const send = async (isConfirmed: boolean) => {
    const isHere = stayer();
    const saved = await save(form, test, isConfirmed);
    if ("asked" in saved) return;
    if ("record" in saved) {
      forget(form);
      if (isHere()) onSaved(saved.record);
    } else if ("waits" in saved) {
      forget(form);
      if (isHere()) onWaits();
    } else if ("changedMeanwhile" in saved) setChanged(true);
    else if ("refused" in saved) onRefused();
    if (("changedMeanwhile" in saved || "refused" in saved) && !isHere()) {
      const why = form.problem.value ?? "Someone changed it meanwhile.";
      notice.value = `The test that you left was not saved. ${why} Open its form again to go on.`;
    }
  };
  return { changed, setChanged, send };
}

/** The form of a test of any kind: readings first, what they say beside them, the circumstances below. */
export function TestForm(props: TestFormProps) {
  const { form, sentence, test, onDiscard, onStartOver } = props;
  const summary = useRef<HTMLDivElement>(null);
  useAboveKeyboard();
  const { changed, setChanged, send } = useSending(props, () =>
    requestAnimationFrame(() => summary.current?.focus()),
  );
  const discard = () => {
    form.saving.peek()?.discard();
    forget(form);
    onDiscard();
  };
  return (
    <form
      class={`bench-form bench-form-${form.spec.kind}`}
      noValidate
      onKeyDown={(event) => {
        const saves = event.key === "Enter" && (event.ctrlKey || event.metaKey);
        if (saves) event.currentTarget.requestSubmit();
      }}
      onSubmit={(event) => {
        event.preventDefault();
        if (!form.saving.value) void send(false);
      }}
    >
      <Answer sentence={sentence} />
      <AsLeft kept={form.kept} onStartOver={onStartOver} />
      <ErrorSummary form={form} box={summary} />
      {changed && test && <ChangedMeanwhile form={form} id={test.id} onDone={() => setChanged(false)} />}
      <FormColumns form={form} isNew={test === null} />
      {form.questions.value ? (
        <AskBeforeSaving
          questions={form.questions.value}
          onSave={() => void send(true)}
          onBack={() => {
            form.questions.value = null;
          }}
        />
      ) : (
        <div class="bench-save" ref={stuckBelow}>
          <BusyButton type="submit" class="primary" onMouseDown={keepFocus} busy={form.saving.value !== null}>
            {form.saving.value ? "Saving…" : test === null ? "Save the test" : "Save the correction"}
          </BusyButton>
          <button type="button" onClick={discard}>
            {form.waiting ? "Leave it as it was" : "Discard"}
          </button>
        </div>
      )}
    </form>
  );
}

const focusRow = (key: number) =>
  document
    .getElementById(anchorOf(`rows.${key}`))
    ?.querySelector("input")
    ?.focus();

/** Readings first, what they say beside them, the circumstances below. */
function FormColumns({ form, isNew }: { readonly form: FormModel; readonly isNew: boolean }) {
  const running = useRunning(form.read.value);
  const narrow = useMedia(NARROW);
  const { kind, row } = form.spec;
  const Own = KIND_FIELDS[kind];
  const Pad = narrow && isNew ? KIND_PADS[kind] : undefined;
  const rows = <RowTable form={form} running={running} />;
  return (
    <div class="bench-form-columns">
      <div class="bench-form-main">
        <div class="bench-own">
          <Own form={form} />
        </div>
        {Pad ? (
          <>
            <Pad form={form} running={running} />
            <RowFold form={form}>{rows}</RowFold>
          </>
        ) : (
          rows
        )}
        <OwnInstruments form={form} />
        <div class="bench-common">
          <CommonFields form={form} />
        </div>
      </div>
      <RunningPanel running={running} row={row} bare={Pad !== undefined} onChoose={focusRow} />
    </div>
  );
}

/** The table behind a pad, folded away unless something in it is wrong. */
function RowFold({ form, children }: { readonly form: FormModel; readonly children: ComponentChildren }) {
  const [open, setOpen] = useState(false);
  const isWrong = [...form.shown.value.keys()].some((path) => path.startsWith("rows"));
  return (
    <details
      class="bench-fold"
      open={open || isWrong}
      onToggle={(event) => setOpen(event.currentTarget.open)}
    >
      <summary>
        <span class="bench-fold-title">All {form.spec.row}s</span> to correct, set aside or remove one
      </summary>
      {children}
    </details>
  );
}

const ear = () => import("../ear/EarPanel.tsx");
const wire = () => import("../wire/WirePanel.tsx");
const tilt = () => import("../tilt/TiltPanel.tsx");

/** What a phone or a laptop itself can read for a test, each folded away until it is asked for. */
function OwnInstruments({ form }: { readonly form: FormModel }) {
  const hasSpeed = form.spec.columns.some(({ key }) => key === "speed");
  return (
    <>
      {hasSpeed && (
        <Instrument
          title="Speed by ear"
          says="from the rotor's sound, by microphone or a recording"
          load={ear}
          form={form}
        />
      )}
      <Instrument
        title="By wire"
        says="readings from a microcontroller on a serial port"
        load={wire}
        form={form}
      />
      {form.spec.kind === "friction" && (
        <Instrument
          title="Tilt by phone"
          says="the phone on the board reads the angle"
          load={tilt}
          form={form}
        />
      )}
    </>
  );
}

interface InstrumentProps {
  readonly title: string;
  readonly says: string;
  readonly load: LaterProps<{ readonly form: FormModel }>["load"];
  readonly form: FormModel;
}

function Instrument({ title, says, load, form }: InstrumentProps) {
  const [open, setOpen] = useState(false);
  return (
    <details class="bench-fold" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>
        <span class="bench-fold-title">{title}</span> {says}
      </summary>
      {open && <Later load={load} what={title} props={{ form }} />}
    </details>
  );
}
