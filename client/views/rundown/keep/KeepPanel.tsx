import type { Keep } from "../../../../shared/physics/rundown/input.ts";
import { SettingField } from "../../../ui/SettingField.tsx";
import type { Place } from "../CyclePanel.tsx";
import { KEPT_FORCE, KEPT_PRESSURE, TARGET_MARGIN } from "../handles.ts";
import type { Wish } from "./wish.ts";

export interface KeepPanelProps {
  readonly wish: Wish | null;
  readonly places: readonly Place[];
  /** margin that a new wish begins with [-] */
  readonly wanted: number;
  /** what a new wish for suction [Pa], or for a propeller's thrust [N], begins with */
  readonly first: Keep;
  readonly onWish: (wish: Wish | null) => void;
}

interface Choice {
  readonly key: "steady" | Wish["kind"];
  readonly label: string;
}

const STEADY: Choice = { key: "steady", label: "steady, as the build has it" };
const MARGIN: Choice = { key: "margin", label: "a controller keeps a margin" };
const SUCTION: Choice = { key: "suction", label: "a controller keeps a suction" };
const THRUST: Choice = { key: "thrust", label: "a controller keeps a thrust" };
/** Gram-weights to which a thrust begins [N]. */
const ROUND = 0.01;

/** How the throttle is run: as it is, or by a controller that keeps what is asked while it can. */
export function KeepPanel({ wish, places, wanted, first, onWish }: KeepPanelProps) {
  const choose = (key: Choice["key"]) => {
    if (key === "steady") onWish(null);
    else if (key === "margin") onWish({ kind: "margin", margin: wanted, angle: "worst" });
    else if ("thrust" in first) onWish({ kind: "thrust", thrust: Math.round(first.thrust / ROUND) * ROUND });
    else onWish({ kind: "suction", pressure: Math.round(first.pressure) });
  };
  const choices = [STEADY, MARGIN, "thrust" in first ? THRUST : SUCTION];
  return (
    <fieldset class="keep">
      <legend>Throttle</legend>
      {choices.map(({ key, label }) => (
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
      {wish && <Kept wish={wish} places={places} onWish={onWish} />}
    </fieldset>
  );
}

interface KeptProps<Of extends Wish = Wish> {
  readonly wish: Of;
  readonly places: readonly Place[];
  readonly onWish: (wish: Wish) => void;
}

/** How much of what a controller keeps. */
function Kept({ wish, places, onWish }: KeptProps) {
  if (wish.kind === "margin") return <KeptMargin wish={wish} places={places} onWish={onWish} />;
  if (wish.kind === "suction")
    return (
      <SettingField
        label="Suction to keep"
        spec={KEPT_PRESSURE}
        value={wish.pressure}
        onValue={(kept) => onWish({ kind: "suction", pressure: kept })}
      />
    );
  return (
    <SettingField
      label="Thrust to keep"
      spec={KEPT_FORCE}
      value={wish.thrust}
      onValue={(kept) => onWish({ kind: "thrust", thrust: kept })}
    />
  );
}

function KeptMargin({ wish, places, onWish }: KeptProps<Extract<Wish, { kind: "margin" }>>) {
  return (
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
  );
}
