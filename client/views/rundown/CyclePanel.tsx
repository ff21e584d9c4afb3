import { useState } from "preact/hooks";
import { MOST_CYCLE_PARTS } from "../../../shared/model/limits.ts";
import type { StoredOf } from "../../../shared/model/record.ts";
import type { CycleSegment } from "../../../shared/physics/rundown.ts";
import { saveBuild } from "../../state/saveBuild.ts";
import { NumberField } from "../../ui/NumberField.tsx";
import { cycleText } from "./asked.ts";
import { type CycleRow, readRows, rowsOf, withRow } from "./cycleDraft.ts";
import { DRIVE_CURRENT, SHARE } from "./handles.ts";

export interface Place {
  readonly angle: number;
  readonly title: string;
}

export interface CyclePanelProps {
  readonly build: StoredOf<"builds">;
  /** as tried, else as the build has it */
  readonly cycle: readonly CycleSegment[];
  readonly places: readonly Place[];
  /** null: as the build has it */
  readonly onCycle: (cycle: readonly CycleSegment[] | null) => void;
}

const placeName = ({ title, angle }: Place): string => `${title} ${angle}°`;

/** The cycle that is typed: tried as soon as it can be read, stored with the build on demand. */
function useTypedCycle({ build, cycle, onCycle }: CyclePanelProps) {
  const [rows, setRows] = useState<readonly CycleRow[]>(() => rowsOf(cycle));
  const [refusal, setRefusal] = useState<string | null>(null);
  const read = readRows(rows);
  const stored = build.data.cycle ?? [];
  const isStored = read.cycle !== null && cycleText(read.cycle) === cycleText(stored);
  const show = (next: readonly CycleRow[]) => {
    setRows(next);
    setRefusal(null);
    const { cycle: typed } = readRows(next);
    if (typed) onCycle(cycleText(typed) === cycleText(stored) ? null : typed);
  };
  const save = async () => {
    if (!read.cycle) return;
    const { cycle: _old, ...rest } = build.data;
    const segments = read.cycle.map((segment) => ({ ...segment, moving: segment.moving !== false }));
    const refused = await saveBuild(build, segments.length > 0 ? { ...rest, cycle: segments } : rest);
    setRefusal(refused);
    if (refused === null) onCycle(null);
  };
  return {
    rows,
    read,
    isStored,
    problem: read.whole ?? refusal,
    show,
    save,
    undo: () => show(rowsOf(stored)),
  };
}

/** Where the vehicle is, for what share of the time, with what drive current: typed, tried at once, stored with the build. */
export function CyclePanel(props: CyclePanelProps) {
  const { cycle, places } = props;
  const { rows, read, isStored, problem, show, save, undo } = useTypedCycle(props);
  const change = (key: number, part: Partial<CycleRow>) =>
    show(rows.map((row) => (row.key === key ? { ...row, ...part } : row)));
  return (
    <details class="cycle" open={cycle.length > 0}>
      <summary>Drive cycle</summary>
      <p class="quiet small">
        Its drive motors draw from the same pack: where it is, for what share of the time, with what current.
        {rows.length === 0 && " None yet: the load beside the fan is steady."}
      </p>
      {rows.map((row, i) => (
        <Segment
          key={row.key}
          row={row}
          at={i}
          places={places}
          problems={read.problems}
          onChange={(part) => change(row.key, part)}
          onRemove={() => show(rows.filter(({ key }) => key !== row.key))}
        />
      ))}
      {problem && (
        <p class="field-error" role="alert">
          {problem}
        </p>
      )}
      <div class="cycle-buttons">
        <button
          type="button"
          disabled={rows.length >= MOST_CYCLE_PARTS}
          onClick={() => show(withRow(rows, places[0]?.angle ?? 0))}
        >
          Add a part
        </button>
        {!isStored && (
          <>
            <button type="button" disabled={read.cycle === null} onClick={() => void save()}>
              Save to the build
            </button>
            <button type="button" onClick={undo}>
              As the build has it
            </button>
          </>
        )}
      </div>
    </details>
  );
}

interface SegmentProps {
  readonly row: CycleRow;
  readonly at: number;
  readonly places: readonly Place[];
  readonly problems: ReadonlyMap<string, string>;
  readonly onChange: (part: Partial<CycleRow>) => void;
  readonly onRemove: () => void;
}

function Segment({ row, at, places, problems, onChange, onRemove }: SegmentProps) {
  const known = places.some(({ angle }) => String(angle) === row.angle);
  return (
    <fieldset class="cycle-part">
      <legend>Part {at + 1}</legend>
      <label class="field-label">
        Where
        <select value={row.angle} onChange={(event) => onChange({ angle: event.currentTarget.value })}>
          {!known && <option value={row.angle}>{row.angle}°</option>}
          {places.map((place) => (
            <option key={place.angle} value={String(place.angle)}>
              {placeName(place)}
            </option>
          ))}
        </select>
      </label>
      <NumberField
        label="Time, %"
        spec={SHARE}
        text={row.share}
        error={problems.get(`${at}.share`)}
        onText={(share) => onChange({ share })}
      />
      <NumberField
        label="Drive, A"
        spec={DRIVE_CURRENT}
        text={row.parked ? "0" : row.current}
        error={problems.get(`${at}.current`)}
        onText={(current) => onChange({ current, parked: false })}
      />
      <label class="cycle-parked">
        <input
          type="checkbox"
          checked={row.parked}
          onChange={(event) =>
            onChange(event.currentTarget.checked ? { parked: true, current: "0" } : { parked: false })
          }
        />
        parked
      </label>
      <button type="button" class="plain" aria-label={`Remove part ${at + 1}`} onClick={onRemove}>
        Remove
      </button>
    </fieldset>
  );
}
