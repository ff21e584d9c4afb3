import { SettingField } from "../../../ui/SettingField.tsx";
import type { Place } from "../CyclePanel.tsx";
import { KEPT_PRESSURE, TARGET_MARGIN } from "../handles.ts";
import type { Wish } from "./wish.ts";

export interface KeepPanelProps {
  readonly wish: Wish | null;
  readonly places: readonly Place[];
  /** margin that a new wish begins with [-] */
  readonly wanted: number;
  /** suction that a new wish begins with [Pa] */
  readonly pressure: number;
  readonly onWish: (wish: Wish | null) => void;
}

interface Choice {
  readonly key: "steady" | Wish["kind"];
  readonly label: string;
}

const CHOICES: readonly Choice[] = [
  { key: "steady", label: "steady, as the build has it" },
  { key: "margin", label: "a controller keeps a margin" },
  { key: "suction", label: "a controller keeps a suction" },
];

/** How the throttle is run: as it is, or by a controller that keeps what is asked while it can. */
export function KeepPanel({ wish, places, wanted, pressure, onWish }: KeepPanelProps) {
  const choose = (key: Choice["key"]) => {
    if (key === "steady") onWish(null);
    else if (key === "margin") onWish({ kind: "margin", margin: wanted, angle: "worst" });
    else onWish({ kind: "suction", pressure: Math.round(pressure) });
  };
  return (
    <fieldset class="keep">
      <legend>Throttle</legend>
      {CHOICES.map(({ key, label }) => (
        <label key={key}>
          <input
            type="radio"
            name="throttle"
            checked={(wish?.kind ?? "steady") === key}
            onChange={() => choose(key)}
          />
          {label}
        </label>
      ))}
      {wish?.kind === "margin" && (
        <>
          <label class="field-label">
            On
            <select
              value={String(wish.angle)}
              onChange={({ currentTarget: { value } }) =>
                onWish({ ...wish, angle: value === "worst" ? "worst" : Number(value) })
              }
            >
              <option value="worst">the worst attitude</option>
              {places.map(({ title, angle }) => (
                <option key={angle} value={String(angle)}>
                  {title} {angle}°
                </option>
              ))}
            </select>
          </label>
          <SettingField
            label="Margin to keep"
            spec={TARGET_MARGIN}
            value={wish.margin}
            onValue={(margin) => onWish({ ...wish, margin })}
          />
        </>
      )}
      {wish?.kind === "suction" && (
        <SettingField
          label="Suction to keep"
          spec={KEPT_PRESSURE}
          value={wish.pressure}
          onValue={(kept) => onWish({ kind: "suction", pressure: kept })}
        />
      )}
    </fieldset>
  );
}
