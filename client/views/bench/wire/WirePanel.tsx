import { useState } from "preact/hooks";
import { Problem } from "../../../ui/Problem.tsx";
import { Status } from "../../../ui/Status.tsx";
import type { FormModel } from "../forms/model.ts";
import { whyNoPort } from "./port.ts";
import type { useWire, Wire } from "./useWire.ts";
import { useWireRows } from "./useWireRows.ts";
import { WireTable } from "./WireTable.tsx";

const SPEEDS = [9600, 19_200, 57_600, 115_200, 250_000];
const USUAL = 115_200;

/** Readings from a microcontroller over a serial port: shown live, mapped once, taken by hand or by themselves. */
export default function WirePanel({ form }: { readonly form: FormModel }) {
  const { line, names, mapping, columns, choose, putReading, byItself, setByItself } = useWireRows(form);
  const { wire, problem, isOpen } = line;
  const missing = whyNoPort();
  if (missing) return <p class="quiet">{missing}</p>;
  return (
    <div class="wire">
      <Connection line={line} />
      {problem && <Problem message={problem} />}
      {isOpen && wire.lines === 0 && <Status>Waiting for the first line…</Status>}
      <Unread wire={wire} />
      {names.length > 0 && (
        <>
          <WireTable names={names} wire={wire} mapping={mapping} columns={columns} onChange={choose} />
          <p class="bench-buttons">
            <button type="button" class="primary" onClick={putReading}>
              Take this reading
            </button>
            <label>
              <input
                type="checkbox"
                checked={byItself}
                onChange={(event) => setByItself(event.currentTarget.checked)}
              />{" "}
              {form.spec.kind === "pull"
                ? "take each pull by itself, once the load drops"
                : "take each step by itself, once it stands still for a second"}
            </label>
          </p>
        </>
      )}
    </div>
  );
}

/** Opens the line at its speed, and closes it. */
function Connection({ line: { isOpen, connect, close } }: { readonly line: ReturnType<typeof useWire> }) {
  const [speed, setSpeed] = useState(USUAL);
  return (
    <p class="bench-buttons">
      {isOpen ? (
        <button type="button" onClick={close}>
          Disconnect
        </button>
      ) : (
        <>
          <label>
            Speed of the line{" "}
            <select value={String(speed)} onChange={(event) => setSpeed(Number(event.currentTarget.value))}>
              {SPEEDS.map((each) => (
                <option key={each} value={String(each)}>
                  {each} baud
                </option>
              ))}
            </select>
          </label>
          <button type="button" onClick={() => void connect(speed)}>
            Connect
          </button>
        </>
      )}
    </p>
  );
}

/** Lines that hold no reading are counted, and the last is shown. */
function Unread({ wire: { lines, unread, lastUnread } }: { readonly wire: Wire }) {
  if (unread === 0) return null;
  return (
    <Status class={unread * 2 > lines ? "field-error" : "quiet small"}>
      {unread} of {lines} lines can&apos;t be read, the last: “{lastUnread.slice(0, 60)}”. Is the speed of the
      line right?
    </Status>
  );
}
