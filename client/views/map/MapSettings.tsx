import type { MapKey } from "../../../shared/decide/map/place.ts";
import type { StoredOf } from "../../../shared/model/record.ts";
import { href } from "../../app/router.ts";
import { HANDLE_KEYS } from "../../state/handles.ts";
import { SettingField } from "../../ui/SettingField.tsx";
import { type Asked, freeKey, SHOWN, type Shown } from "./asked.ts";
import { SHOWN_NAMES, settingText, shownOf } from "./mapPlot.ts";
import { movable, type Stands, standsAt } from "./question.ts";
import { MAP_SETTINGS, type MapSetting, settingBy } from "./settings.ts";

export interface SettingsProps {
  readonly asked: Asked;
  readonly stands: Stands;
  readonly build: StoredOf<"builds">;
  readonly onAsk: (asked: Asked) => void;
  readonly onMove: (values: Asked["moved"], settled: boolean) => void;
}

/** @returns what is asked with other axes: two that are the same change places, the third setting is another one */
function withAxes(asked: Asked, part: Partial<Pick<Asked, "x" | "y" | "third">>, keys: MapKey[]): Asked {
  const next = { ...asked, ...part };
  if (next.x === next.y) Object.assign(next, part.x ? { y: asked.x } : { x: asked.y });
  if (next.third === next.x || next.third === next.y) next.third = freeKey([next.x, next.y], keys);
  return next;
}

/** What the axes are, what is shown, where the build stands on both, and what is dragged. */
export function MapSettings({ asked, stands, build, onAsk, onMove }: SettingsProps) {
  const { x, y, third, shown, moved } = asked;
  const keys = movable(stands);
  const axes = (part: Partial<Pick<Asked, "x" | "y" | "third">>) => onAsk(withAxes(asked, part, keys));
  const slider = (key: MapKey) => ({
    setting: settingBy(key),
    was: standsAt(stands, key),
    value: moved[key] ?? standsAt(stands, key),
    onMove,
  });
  return (
    <section class="page-side" aria-label="What is mapped">
      <Choice label="Across" keys={keys} value={x} onChoose={(key) => axes({ x: key })} />
      <Choice label="Upwards" keys={keys} value={y} onChoose={(key) => axes({ y: key })} />
      <label class="field-label">
        Shown
        <select
          value={shown}
          onChange={(event) => onAsk({ ...asked, shown: event.currentTarget.value as Shown })}
        >
          {SHOWN.map((each) => (
            <option key={each} value={each}>
              {SHOWN_NAMES[each]}
            </option>
          ))}
        </select>
      </label>
      <h2>This build</h2>
      {[x, y].map((key) => (
        <Slider key={key} {...slider(key)} />
      ))}
      <h2>What else moves it</h2>
      <Choice
        label="Setting"
        keys={keys.filter((key) => key !== x && key !== y)}
        value={third}
        onChoose={(key) => axes({ third: key })}
      />
      <Slider key={`third ${third}`} {...slider(third)} />
      <p>
        {Object.keys(moved).length > 0 && (
          <button type="button" onClick={() => onAsk({ ...asked, moved: {} })}>
            Back to the build as stored
          </button>
        )}
      </p>
      <WayToMatch build={build.id} moved={moved} />
    </section>
  );
}

/** The same settings, as far as Match has them. */
function WayToMatch({ build, moved }: { readonly build: string; readonly moved: Asked["moved"] }) {
  const tried = HANDLE_KEYS.flatMap((key) => {
    const value = moved[key as MapKey];
    return value === undefined ? [] : [[key, String(value)] as const];
  });
  return (
    <p>
      <a href={href("match", build, Object.fromEntries(tried))}>Look at it in Match</a>
      {moved.kv !== undefined && (
        <small class="quiet"> Without the speed constant: a build takes a motor of the book.</small>
      )}
    </p>
  );
}

interface ChoiceProps {
  readonly label: string;
  readonly keys: readonly MapKey[];
  readonly value: MapKey;
  readonly onChoose: (key: MapKey) => void;
}

function Choice({ label, keys, value, onChoose }: ChoiceProps) {
  return (
    <label class="field-label">
      {label}
      <select value={value} onChange={(event) => onChoose(event.currentTarget.value as MapKey)}>
        {MAP_SETTINGS.filter(({ key }) => keys.includes(key)).map((setting) => (
          <option key={setting.key} value={setting.key}>
            {setting.label}
          </option>
        ))}
      </select>
    </label>
  );
}

interface SliderProps {
  readonly setting: MapSetting;
  readonly was: number;
  readonly value: number;
  readonly onMove: (values: Asked["moved"], settled: boolean) => void;
}

function Slider({ setting, was, value, onMove }: SliderProps) {
  const [from, to] = setting.ends(was).map((end) => shownOf(setting.key, end));
  const step = setting.whole ? 1 : 10 ** -setting.decimals;
  return (
    <SettingField
      label={setting.label}
      spec={setting}
      value={value}
      shown={String(Number(shownOf(setting.key, value).toFixed(setting.decimals)))}
      slider={{ min: from, max: to, step }}
      hint={`the build has ${settingText(setting.key, was)}`}
      onValue={(si, settled) => onMove({ [setting.key]: si }, settled)}
    />
  );
}
