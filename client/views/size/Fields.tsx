import { namedAttitudes } from "../../../shared/book/attitudes.ts";
import type { Book } from "../../../shared/book/resolve.ts";
import type { RotorKind } from "../../../shared/book/size/families.ts";
import { CELL_VOLTAGE } from "../../../shared/model/baseLimits.ts";
import type { Build } from "../../../shared/model/build.ts";
import { BUILD } from "../../../shared/model/limits.ts";
import type { NumberSpec } from "../../../shared/units/readNumber.ts";
import { SettingField } from "../../ui/SettingField.tsx";
import type { Asked } from "./asked.ts";
import type { Settings } from "./settings.ts";

const MARGIN = {
  dimension: null,
  suffix: "×",
  limits: BUILD.targetMargin,
  example: "1.5",
} as const satisfies NumberSpec;
const VOLTAGE = {
  dimension: "voltage",
  limits: CELL_VOLTAGE,
  example: "3.5 V",
} as const satisfies NumberSpec;
const DIAMETER = {
  dimension: "length",
  limits: BUILD.diameter,
  example: "44 mm",
} as const satisfies NumberSpec;
const ANGLE = {
  dimension: "inclination",
  limits: BUILD.attitudes.angle,
  example: "153°",
} as const satisfies NumberSpec;

export interface FieldsProps {
  readonly book: Book;
  readonly settings: Settings;
  readonly kinds: readonly RotorKind[];
  readonly onAsk: (part: Partial<Asked>) => void;
}

/** An attitude that is none of the build's own. */
const STEEP = 135;

/** On which attitude, by how much. */
export function HoldFields({
  build,
  settings: { hold },
  onAsk,
}: Pick<FieldsProps, "settings" | "onAsk"> & { readonly build: Build }) {
  const named = namedAttitudes(build);
  const isOther = hold.angle !== "worst" && !named.some(({ angle }) => angle === hold.angle);
  const choose = (value: string) => {
    if (value === "worst") onAsk({ angle: "worst" });
    else onAsk({ angle: value === "other" ? STEEP : Number(value) });
  };
  return (
    <>
      <label class="field-label">
        On
        <select
          value={isOther ? "other" : String(hold.angle)}
          onChange={({ currentTarget: { value } }) => choose(value)}
        >
          <option value="worst">the worst attitude</option>
          {named.map(({ title, angle }) => (
            <option key={angle} value={String(angle)}>
              {title} {angle}°
            </option>
          ))}
          <option value="other">another angle</option>
        </select>
      </label>
      {isOther && (
        <SettingField
          label="Angle"
          spec={ANGLE}
          value={Number(hold.angle)}
          hint="0 floor, 90 wall, 180 ceiling"
          onValue={(angle) => onAsk({ angle })}
        />
      )}
      <SettingField
        label="Margin wanted"
        spec={MARGIN}
        value={hold.margin}
        onValue={(margin) => onAsk({ margin })}
      />
    </>
  );
}

/** At which voltage of a cell. */
export function VoltageField({ settings: { cellVoltage }, onAsk }: Pick<FieldsProps, "settings" | "onAsk">) {
  return (
    <SettingField
      label="Cell at rest"
      spec={VOLTAGE}
      value={cellVoltage}
      shown={cellVoltage.toFixed(2)}
      hint="it does so at every fuller charge; a fifth of the charge is left unless you say otherwise"
      onValue={(voltage) => onAsk({ cellVoltage: voltage })}
    />
  );
}

const ENDS: Readonly<Record<RotorKind, readonly [string, string]>> = {
  ducted: ["Smallest size", "Largest size"],
  propeller: ["Smallest propeller", "Largest propeller"],
};

/** Between which sizes. */
export function RangeFields({ settings: { ranges }, kinds, onAsk }: Omit<FieldsProps, "book">) {
  const ask = (kind: RotorKind, end: "from" | "to", diameter: number) =>
    onAsk({ ranges: { ...ranges, [kind]: { ...ranges[kind], [end]: diameter } } });
  return (
    <>
      {kinds.map((kind) => (
        <div key={kind} class="size-range">
          <SettingField
            label={ENDS[kind][0]}
            spec={DIAMETER}
            value={ranges[kind].from}
            onValue={(from) => ask(kind, "from", from)}
          />
          <SettingField
            label={ENDS[kind][1]}
            spec={DIAMETER}
            value={ranges[kind].to}
            onValue={(to) => ask(kind, "to", to)}
          />
        </div>
      ))}
    </>
  );
}

/** Whose strength the motor has. */
export function MotorField({ book, settings: { motor }, onAsk }: Omit<FieldsProps, "kinds">) {
  const motors = book.motors.filter(({ id, data }) => !data.retired || id === motor);
  return (
    <label class="field-label">
      Motor as strong as
      <select value={motor} onChange={({ currentTarget: { value } }) => onAsk({ motor: value })}>
        {motors.map(({ id, data }) => (
          <option key={id} value={id}>
            {data.name}
          </option>
        ))}
      </select>
    </label>
  );
}
