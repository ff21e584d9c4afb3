import { useEffect, useState } from "preact/hooks";
import { LONGEST_REASON } from "../../../shared/model/baseLimits.ts";
import type { StoredOf } from "../../../shared/model/record.ts";
import { href } from "../../app/router.ts";
import { ApiError } from "../../state/api.ts";
import { correctRecord } from "../../state/write.ts";
import { BusyButton } from "../../ui/BusyButton.tsx";
import { Field } from "../../ui/Field.tsx";
import { stuckBelow } from "../../ui/stuckBelow.ts";
import type { Fact } from "./Page.tsx";
import { plateFacts } from "./plateFigure.tsx";
import { withRowSetAside } from "./setAside.ts";
import { testName, typedRow } from "./typed.ts";

export interface PointPanelProps {
  readonly test: StoredOf<"tests"> | null;
  readonly row: number;
  readonly onClose: () => void;
  /** figures made from the reading, below what was typed */
  readonly derived?: readonly Fact[];
}

/** The reading that was chosen on a chart: what was typed, where it stands, and setting it aside or taking it back. */
export function PointPanel({ test, row, onClose, derived = [] }: PointPanelProps) {
  const [problem, setProblem] = useState<string | null>(null);
  const [busy, setBusy] = useState(false);
  const place = test ? `${test.id}#${row}` : "";
  useEffect(() => setProblem(null), [place]);
  const said = test?.data.rows[row];
  if (!test || !said)
    return (
      <section class="curves-point">
        <h2>A reading</h2>
        <p class="quiet">
          Choose a point on a chart to read what was typed, or to set it aside with a reason.
        </p>
      </section>
    );
  const store = async (reason: string | null) => {
    setBusy(true);
    setProblem(await put(test, row, reason));
    setBusy(false);
  };
  return (
    <section class="curves-point chosen" aria-label="The chosen reading" ref={stuckBelow}>
      <h2>
        Row {row + 1} of <a href={href("bench", test.id)}>{testName(test)}</a>
        <button type="button" class="plain curves-point-close" onClick={onClose}>
          Close
        </button>
      </h2>
      <dl class="curves-facts">
        {[...typedRow(test.data, row), ...plateFacts(test, row), ...derived].map(({ label, text }) => (
          <div key={label}>
            <dt>{label}</dt>
            <dd>{text}</dd>
          </div>
        ))}
      </dl>
      {said.setAside === undefined ? (
        <SetAsideForm key={place} busy={busy} onSetAside={store} />
      ) : (
        <>
          <p>Set aside: “{said.setAside}”</p>
          <BusyButton type="button" busy={busy} onClick={() => void store(null)}>
            Take it back
          </BusyButton>
        </>
      )}
      {problem && (
        <p class="bad" role="alert">
          {problem}
        </p>
      )}
    </section>
  );
}

function SetAsideForm({
  busy,
  onSetAside,
}: {
  busy: boolean;
  onSetAside: (reason: string) => Promise<void>;
}) {
  const [reason, setReason] = useState("");
  const [asked, setAsked] = useState(false);
  const empty = reason.trim() === "";
  const submit = (event: Event) => {
    event.preventDefault();
    setAsked(true);
    if (!empty) void onSetAside(reason);
  };
  return (
    <form class="curves-aside-form" onSubmit={submit}>
      <Field
        label="Why leave it out of the fit?"
        error={asked && empty ? 'Say why, for example "hose came off".' : null}
        hint="It stays in the book and can be taken back."
      >
        {(input) => (
          <input
            {...input}
            type="text"
            maxLength={LONGEST_REASON}
            autocomplete="off"
            value={reason}
            onInput={(event) => setReason(event.currentTarget.value)}
          />
        )}
      </Field>
      <BusyButton type="submit" busy={busy}>
        Set it aside
      </BusyButton>
    </form>
  );
}

/** @returns what went wrong, null where it was stored */
async function put(test: StoredOf<"tests">, row: number, reason: string | null): Promise<string | null> {
  try {
    const body = withRowSetAside(test.data, row, reason);
    await correctRecord("tests", test, body);
    return null;
  } catch (error) {
    if (!(error instanceof ApiError)) throw error;
    return error.message;
  }
}
