import { useState } from "preact/hooks";
import { TEST } from "../../../../shared/model/limits.ts";
import { answerOrNull } from "../../../../shared/numeric/errors.ts";
import { stationPressure } from "../../../../shared/physics/stationPressure.ts";
import { figureIn, formatQuantity } from "../../../../shared/units/format.ts";
import { isGood, type NumberSpec, readNumber } from "../../../../shared/units/readNumber.ts";
import { settledText } from "../../../../shared/units/settled.ts";
import { unitOf } from "../../../../shared/units/showing.ts";
import { currentBook } from "../../../state/book.ts";
import { keepFocus } from "../../../ui/keepFocus.ts";
import { dayText } from "../../../ui/moment.ts";
import { NumberField } from "../../../ui/NumberField.tsx";
import { AIR_FIELDS } from "../record/kinds.ts";
import { lastAir } from "./lastAir.ts";
import { change, type FormModel } from "./model.ts";

const SEA_LEVEL: NumberSpec = {
  dimension: "airPressure",
  limits: TEST.air.pressure,
  example: "1018 hPa",
};
const ALTITUDE: NumberSpec = {
  dimension: "height",
  limits: { min: -500, max: 6000 },
  example: "420 m",
};

/** An altitude that shows what it matters [m]. */
const HIGH = 500;

/** Under the fields of the air: the last test's, and what pressure is meant. */
export function AirHelp({ form }: { readonly form: FormModel }) {
  const last = currentBook.value && lastAir(currentBook.value);
  const take = (texts: Readonly<Record<string, string>>) => {
    const draft = form.draft.value;
    change(form, { ...draft, fields: { ...draft.fields, ...texts } });
  };
  return (
    <>
      {last && (
        <p>
          <button type="button" class="plain" onMouseDown={keepFocus} onClick={() => take(last.texts)}>
            As in the last test
          </button>{" "}
          <span class="quiet">
            {AIR_FIELDS.map(({ key }) => last.texts[key]).join(" · ")}, {dayText(last.date)}
          </span>
        </p>
      )}
      <p class="quiet small">
        The air pressure is what a barometer shows on the bench. A weather report reduces it to sea level: at
        {formatQuantity(HIGH, "height")} its figure is 6 % too high, and so would be every density and pull.
        Given only that, say how high you are:
      </p>
      <FromSeaLevel onTake={(text) => take({ "air.pressure": text })} />
    </>
  );
}

/** @returns a number's SI value; null where it can't be read */
function siOf(spec: NumberSpec, text: string): number | null {
  const reading = text.trim() === "" ? null : readNumber(spec, text);
  return reading && isGood(reading) ? reading.value : null;
}

/** What is wrong with a text, once there is one. */
function wrongWith(spec: NumberSpec, text: string): string | undefined {
  const reading = text.trim() === "" ? null : readNumber(spec, text);
  return reading && !isGood(reading) ? reading.message : undefined;
}

/** The pressure on the bench from the one reduced to sea level. */
function FromSeaLevel({ onTake }: { readonly onTake: (text: string) => void }) {
  const [seaLevel, setSeaLevel] = useState("");
  const [altitude, setAltitude] = useState("");
  const [pressure, height] = [siOf(SEA_LEVEL, seaLevel), siOf(ALTITUDE, altitude)];
  const here =
    pressure === null || height === null ? null : answerOrNull(() => stationPressure(pressure, height));
  const text = here === null ? null : `${figureIn(here, "airPressure", 1)} ${unitOf("airPressure")}`;
  return (
    <div class="bench-fields bench-at-sea">
      <NumberField
        label="Pressure at sea level"
        spec={SEA_LEVEL}
        text={seaLevel}
        error={wrongWith(SEA_LEVEL, seaLevel)}
        onText={setSeaLevel}
        onLeave={() => setSeaLevel(settledText(SEA_LEVEL, seaLevel))}
      />
      <NumberField
        label="Altitude of the bench"
        spec={ALTITUDE}
        text={altitude}
        error={wrongWith(ALTITUDE, altitude)}
        onText={setAltitude}
        onLeave={() => setAltitude(settledText(ALTITUDE, altitude))}
      />
      {text && (
        <p class="bench-here">
          <button type="button" onMouseDown={keepFocus} onClick={() => onTake(text.replace(/\s(?=\d)/g, ""))}>
            Take {text}
          </button>
        </p>
      )}
    </div>
  );
}
