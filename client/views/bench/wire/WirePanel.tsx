import { useRef, useState } from "preact/hooks";
import { decimalsFor, formatFixed } from "../../../../shared/units/format.ts";
import { Problem } from "../../../ui/Problem.tsx";
import { ScrollTable } from "../../../ui/ScrollTable.tsx";
import { change, type FormModel } from "../forms/model.ts";
import { roleOf, unitIn } from "../import/headers.ts";
import { columnsOf } from "../record/kinds.ts";
import { unitLabels } from "../record/numbers.ts";
import { carriedOf } from "../record/readDraft.ts";
import type { ColumnSpec } from "../record/spec.ts";
import { keepMapping, mappingFor } from "./mappings.ts";
import { whyNoPort } from "./port.ts";
import type { Readings } from "./serialLine.ts";
import { useWire, type Wire } from "./useWire.ts";
import { PullWatch } from "./watch.ts";
import { textsOf, type WireColumn, type WireMapping, withReading } from "./wireRows.ts";

const SPEEDS = [9600, 19_200, 57_600, 115_200, 250_000];
const USUAL = 115_200;
const DIGITS = 5;
/** A step is another one once a value is off by more than this share of the last [-]. Judgement. */
const ANOTHER = 0.04;

const shown = (value: number): string => formatFixed(value, decimalsFor(value, DIGITS));

/** What a name is, as a header of a file would be read. */
function guessed(form: FormModel, columns: readonly ColumnSpec[], name: string): WireColumn {
  const column = columns.find(({ key }) => key === roleOf(name, form.spec.kind));
  if (!column?.dimension) return { column: "", unit: "" };
  return { column: column.key, unit: unitIn(name, column.dimension) ?? unitLabels(column.dimension, "")[1] };
}

/** Every name with what it is: as it was set, as it was the last time, as it reads. */
function wholeMapping(
  form: FormModel,
  columns: readonly ColumnSpec[],
  names: readonly string[],
  set: WireMapping,
): WireMapping {
  const before = mappingFor(form.spec.kind, names);
  return Object.fromEntries(
    names.map((name) => [name, set[name] ?? before[name] ?? guessed(form, columns, name)]),
  );
}

/** The means of the columns that a step is made of, once all of them stand still; null while one moves. */
function steadyStep({ watched }: Wire, mapping: WireMapping): Map<string, number> | null {
  const used = [...watched].filter(([name]) => mapping[name]?.column);
  const plateaus = used.map(([name, each]) => [name, each.plateau()] as const);
  if (used.length === 0 || plateaus.some(([, plateau]) => plateau === null)) return null;
  return new Map(plateaus.map(([name, plateau]) => [name, plateau?.mean ?? 0]));
}

const isAnother = (step: Readings, last: Readings | null): boolean =>
  last === null ||
  [...step].some(([name, value]) => Math.abs(value - (last.get(name) ?? 0)) > ANOTHER * Math.abs(value));

/** Readings from a microcontroller over a serial port: shown live, mapped once, taken by hand or by themselves. */
export default function WirePanel({ form }: { readonly form: FormModel }) {
  const [speed, setSpeed] = useState(USUAL);
  const [set, setMapping] = useState<WireMapping>({});
  const [byItself, setByItself] = useState(false);
  const pulls = useRef(new PullWatch());
  const last = useRef<Readings | null>(null);
  const columns = columnsOf(form.spec, form.draft.value.fields).filter(({ dimension }) => dimension !== null);
  const isPull = form.spec.kind === "pull";
  const put = (texts: Readonly<Record<string, string>>) => {
    if (Object.keys(texts).length === 0) return;
    change(form, withReading(form.draft.value, texts, carriedOf(form.spec)).draft);
  };
  const onReadings = (readings: Readings, now: Wire) => {
    if (!byItself) return;
    const mapping = wholeMapping(form, columns, [...now.values.keys()], set);
    if (isPull) return takePull(readings, mapping);
    const step = steadyStep(now, mapping);
    if (!step || !isAnother(step, last.current)) return undefined;
    last.current = step;
    return put(textsOf(step, mapping));
  };
  const takePull = (readings: Readings, mapping: WireMapping) => {
    const name = [...readings.keys()].find((each) => mapping[each]?.column === "held");
    const pull = name === undefined ? null : pulls.current.push(readings.get(name) ?? 0);
    if (!pull || name === undefined) return;
    const { unit } = mapping[name];
    const others = textsOf(new Map([...readings].filter(([each]) => each !== name)), mapping);
    put({
      ...others,
      ...textsOf(
        new Map([
          ["held", pull.held],
          ["letGo", pull.letGo],
        ]),
        { held: { column: "held", unit }, letGo: { column: "letGo", unit } },
      ),
    });
  };
  const { wire, problem, isOpen, connect, close } = useWire(onReadings);
  const names = [...wire.values.keys()];
  const mapping = wholeMapping(form, columns, names, set);
  const choose = (name: string, to: WireColumn) => {
    const next = { ...mapping, [name]: to };
    setMapping(next);
    keepMapping(form.spec.kind, names, next);
  };
  const missing = whyNoPort();
  if (missing) return <p class="quiet">{missing}</p>;
  return (
    <div class="wire">
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
      {problem && <Problem message={problem} />}
      {isOpen && wire.lines === 0 && <p role="status">Waiting for the first line…</p>}
      <Unread wire={wire} />
      {names.length > 0 && (
        <>
          <ScrollTable label="What the instrument says">
            <table class="bench-mapping">
              <thead>
                <tr>
                  {["It says", "Now", "Peak", "It is", "Unit"].map((head) => (
                    <th key={head} scope="col">
                      {head}
                    </th>
                  ))}
                </tr>
              </thead>
              <tbody>
                {names.map((name) => (
                  <WireRow
                    key={name}
                    name={name}
                    wire={wire}
                    to={mapping[name]}
                    columns={columns}
                    onChange={choose}
                  />
                ))}
              </tbody>
            </table>
          </ScrollTable>
          <p class="bench-buttons">
            <button type="button" class="primary" onClick={() => put(textsOf(wire.values, mapping))}>
              Take this reading
            </button>
            <label>
              <input
                type="checkbox"
                checked={byItself}
                onChange={(event) => setByItself(event.currentTarget.checked)}
              />{" "}
              {isPull
                ? "take each pull by itself, once the load drops"
                : "take each step by itself, once it stands still for a second"}
            </label>
          </p>
        </>
      )}
    </div>
  );
}

/** Lines that hold no reading are counted, and the last is shown. */
function Unread({ wire: { lines, unread, lastUnread } }: { readonly wire: Wire }) {
  if (unread === 0) return null;
  return (
    <p class={unread * 2 > lines ? "field-error" : "quiet small"} role="status">
      {unread} of {lines} lines can&apos;t be read, the last: “{lastUnread.slice(0, 60)}”. Is the speed of the
      line right?
    </p>
  );
}

interface WireRowProps {
  readonly name: string;
  readonly wire: Wire;
  readonly to: WireColumn;
  readonly columns: readonly ColumnSpec[];
  readonly onChange: (name: string, to: WireColumn) => void;
}

function WireRow({ name, wire, to, columns, onChange }: WireRowProps) {
  const column = columns.find(({ key }) => key === to.column);
  const watched = wire.watched.get(name);
  return (
    <tr>
      <th scope="row">{name}</th>
      <td>
        {shown(wire.values.get(name) ?? 0)} {watched?.plateau() && <span class="quiet small">steady</span>}
      </td>
      <td>{watched && shown(watched.peak)}</td>
      <td>
        <select
          aria-label={`What ${name} is`}
          value={to.column}
          onChange={(event) => {
            const key = event.currentTarget.value;
            const dimension = columns.find((each) => each.key === key)?.dimension;
            onChange(name, { column: key, unit: dimension ? unitLabels(dimension, "")[1] : "" });
          }}
        >
          <option value="">not used</option>
          {columns.map(({ key, label }) => (
            <option key={key} value={key}>
              {label.toLowerCase()}
            </option>
          ))}
        </select>
      </td>
      <td>
        {column?.dimension && (
          <select
            aria-label={`Unit of ${name}`}
            value={to.unit}
            onChange={(event) => onChange(name, { ...to, unit: event.currentTarget.value })}
          >
            {unitLabels(column.dimension, to.unit).map((unit) => (
              <option key={unit} value={unit}>
                {unit}
              </option>
            ))}
          </select>
        )}
      </td>
    </tr>
  );
}
