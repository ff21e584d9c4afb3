import { useState } from "preact/hooks";
import { findById } from "../../../../shared/book/book.ts";
import { RPM } from "../../../../shared/physics/motor.ts";
import { formatDigits, formatFixed } from "../../../../shared/units/format.ts";
import { isGood, type NumberSpec, readNumber } from "../../../../shared/units/readNumber.ts";
import { typedText } from "../../../../shared/units/shown.ts";
import { PlotChart } from "../../../charts/PlotChart.tsx";
import { currentBook } from "../../../state/book.ts";
import { NumberField } from "../../../ui/NumberField.tsx";
import { Problem } from "../../../ui/Problem.tsx";
import { Status } from "../../../ui/Status.tsx";
import { type FormModel, leave, typeCell, typeField } from "../forms/model.ts";
import { Part } from "../import/Part.tsx";
import { notesOn, speedText, speedWords, uncertaintyText } from "./earWords.ts";
import { spectrumPlot, spectrumTable } from "./spectrumPlot.ts";
import { type Hearing, useEar } from "./useEar.ts";

const BLADES: NumberSpec = { dimension: null, limits: { min: 1, max: 60, whole: true }, example: "9" };
const SPEED: NumberSpec = { dimension: "speed", limits: { positive: true }, example: "24000 rpm" };
/** Slower and faster than any rotor of this work turns. */
const [SLOWEST, FASTEST] = [1500 * RPM, 70_000 * RPM];

/** The blade count of the form's rotor, as text; empty where it isn't known. */
function bladesOf(form: FormModel): string {
  const book = currentBook.peek();
  const rotor = book && findById(book.rotors, form.draft.value.fields.rotor ?? "")?.data;
  return rotor?.geometry ? String(rotor.geometry.bladeCount) : "";
}

const numberIn = (spec: NumberSpec, text: string): number | null => {
  const reading = text.trim() === "" ? null : readNumber(spec, text);
  return reading && isGood(reading) ? reading.value : null;
};

const errorIn = (spec: NumberSpec, text: string): string | null => {
  const reading = text.trim() === "" ? null : readNumber(spec, text);
  return reading && !isGood(reading) ? reading.message : null;
};

/** The row that a speed goes to: the first without one, else the last. */
function rowFor({ draft }: FormModel): { readonly key: number; readonly number: number } {
  const { rows } = draft.value;
  const at = rows.findIndex(({ cells, aside }) => aside === null && (cells.speed ?? "").trim() === "");
  const index = at < 0 ? rows.length - 1 : at;
  return { key: rows[index].key, number: index + 1 };
}

/** Puts the speed into a row, and its uncertainty beside the instruments where nothing is stated there. */
function take(form: FormModel, key: number, speed: NonNullable<Hearing["speed"]>): void {
  typeCell(form, key, "speed", speedText(speed));
  leave(form, `rows.${key}.speed`);
  const { fields } = form.draft.value;
  const isStated = ["", ".percent", ".absolute"].some((end) => fields[`instruments.speed${end}`]);
  if (!isStated) typeField(form, "instruments.speed.absolute", uncertaintyText(speed));
}

/** What the sound is searched with: the blades of the form's rotor, or as typed, and the range of its speed. */
function useSought(form: FormModel) {
  const [typed, setTyped] = useState<string | null>(null);
  const [from, setFrom] = useState("");
  const [to, setTo] = useState("");
  const text = typed ?? bladesOf(form);
  const range = { from: numberIn(SPEED, from) ?? SLOWEST, to: numberIn(SPEED, to) ?? FASTEST };
  return {
    texts: { blades: text, from, to },
    set: { blades: setTyped, from: setFrom, to: setTo },
    blades: numberIn(BLADES, text),
    range,
    isRange: range.to > range.from,
  };
}

/** Speed from the rotor's sound: heard live or from a recording, drawn, taken into a row by one tap. */
export default function EarPanel({ form }: { readonly form: FormModel }) {
  const sought = useSought(form);
  const { blades, range, isRange } = sought;
  const ear = useEar({ blades: blades ?? 1, ...(isRange ? range : { from: SLOWEST, to: FASTEST }) });
  const { hearing, problem } = ear;
  return (
    <div class="ear">
      <SoughtFields sought={sought} />
      <Sources ear={ear} isReady={blades !== null} />
      <p class="quiet small">Nothing that is heard leaves this device, and nothing of it is stored.</p>
      <Part what="Hearing it through" part={ear.part} />
      {problem && <Problem message={problem} />}
      {ear.isOpen && !hearing && <Status>Listening…</Status>}
      {hearing && blades !== null && (
        <Heard form={form} hearing={hearing} blades={blades} fastest={range.to} />
      )}
    </div>
  );
}

function SoughtFields({ sought }: { readonly sought: ReturnType<typeof useSought> }) {
  const { texts, set, isRange } = sought;
  return (
    <div class="bench-fields">
      <NumberField
        label="Blades"
        hint="of the rotor, counted"
        spec={BLADES}
        text={texts.blades}
        error={errorIn(BLADES, texts.blades)}
        onText={set.blades}
      />
      <NumberField
        label="Speed from, optional"
        spec={SPEED}
        text={texts.from}
        placeholder={typedText(SLOWEST, "speed", 4)}
        error={errorIn(SPEED, texts.from)}
        onText={set.from}
      />
      <NumberField
        label="to, optional"
        spec={SPEED}
        text={texts.to}
        placeholder={typedText(FASTEST, "speed", 4)}
        error={errorIn(SPEED, texts.to) ?? (isRange ? null : "The end lies below the beginning.")}
        onText={set.to}
      />
    </div>
  );
}

interface SourcesProps {
  readonly ear: ReturnType<typeof useEar>;
  /** the blades are known */
  readonly isReady: boolean;
}

/** Where the sound comes from: the microphone, or a recording. */
function Sources({ ear, isReady }: SourcesProps) {
  return (
    <p class="bench-buttons">
      {ear.isOpen ? (
        <button type="button" onClick={ear.stop}>
          Stop listening
        </button>
      ) : (
        <button type="button" disabled={!isReady} onClick={() => void ear.start()}>
          Listen
        </button>
      )}
      <label class="ear-file">
        or a recording{" "}
        <input
          type="file"
          accept="audio/*"
          disabled={!isReady}
          onChange={(event) => {
            const file = event.currentTarget.files?.[0];
            if (file) void ear.hearRecording(file);
          }}
        />
      </label>
    </p>
  );
}

interface HeardProps {
  readonly form: FormModel;
  readonly hearing: Hearing;
  readonly blades: number;
  /** plausible, for how far the spectrum is drawn [rad/s] */
  readonly fastest: number;
}

/** Harmonics of the blade-passing frequency that the picture has room for. */
const SHOWN_HARMONICS = 5;
const SPECTRUM_HEIGHT = 240;

/** Why no speed can be said. */
const silenceWords = ({ moments }: Hearing): string =>
  moments.length > 0
    ? "No speed lasts through the recording."
    : "No rotor is heard: go nearer, or give the range of its speed.";

function Heard({ form, hearing, blades, fastest }: HeardProps) {
  const { spectrum, found, speed } = hearing;
  const whole = (spectrum.power.length - 1) * spectrum.step;
  const most = found ? SHOWN_HARMONICS * found.frequency : (fastest * blades) / (2 * Math.PI);
  const drawn = { spectrum, found: found?.frequency ?? null, to: Math.min(whole, most) };
  const row = rowFor(form);
  return (
    <>
      <Status class="ear-speed">
        {speed ? <strong>{speedWords(speed)}</strong> : silenceWords(hearing)}
        {found && speed && (
          <span class="quiet">
            {" "}
            blade-passing frequency {formatFixed(found.frequency, 1)}
            {"\u202f"}Hz
          </span>
        )}
      </Status>
      {speed && (
        <p>
          <button type="button" class="primary" onClick={() => take(form, row.key, speed)}>
            Take {speedText(speed)} into {form.spec.row} {row.number}
          </button>
        </p>
      )}
      {found &&
        notesOn(found, blades).map((note) => (
          <p key={note} class="quiet small">
            {note}
          </p>
        ))}
      <Coasting hearing={hearing} />
      <PlotChart
        name="spectrum"
        sentence={`Loudness over frequency${hearing.from ? `, ${hearing.from}` : ""}; the blade-passing frequency and its harmonics are marked.`}
        plot={spectrumPlot(drawn)}
        height={() => SPECTRUM_HEIGHT}
        tableTitle="The spectrum as a table"
        table={() => spectrumTable(drawn)}
        reading={null}
      />
    </>
  );
}

/** What the decay of the speed says of friction and air. */
function Coasting({ hearing: { coastDown } }: { readonly hearing: Hearing }) {
  if (!coastDown) return null;
  const { friction, frictionError, from, to } = coastDown;
  if (!(friction > frictionError))
    return (
      <p class="quiet">
        It coasts down, but its friction can&apos;t be measured apart from the air: record until it stands.
      </p>
    );
  return (
    <p>
      It coasts down from {formatFixed(from, 1)} to {formatFixed(to, 1)}
      {"\u202f"}s: friction torque over inertia{" "}
      <strong>
        {formatFixed(friction, 0)} ± {formatFixed(1.645 * frictionError, 0)}
        {"\u202f"}rad/s² (90 %)
      </strong>
      , so each g·cm² of motor and rotor stands for {formatDigits(friction * 1e-7 * 1e6, 2)}
      {"\u202f"}µN·m of friction.
    </p>
  );
}
