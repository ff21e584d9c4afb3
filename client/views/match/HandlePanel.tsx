import { useCallback, useMemo, useState } from "preact/hooks";
import type { Book, Resolved } from "../../../shared/book/resolve.ts";
import type { Build } from "../../../shared/model/build.ts";
import { changes, leftOut, settle, unknownParts } from "../../state/build.ts";
import { HANDLES, type HandleKey, type Handle as HandleKind, type Settings } from "../../state/handles.ts";
import { isChanged } from "../../state/outcome.ts";
import { PARTS_TRIED, type PartTried } from "../../state/partsTried.ts";
import { Status } from "../../ui/Status.tsx";
import { stuckBelow } from "../../ui/stuckBelow.ts";
import { NARROW, useMedia } from "../../ui/useMedia.ts";
import { Basis } from "./basis.tsx";
import { range, withUnit } from "./entry.ts";
import { Handle } from "./Handle.tsx";
import { PartList } from "./parts/PartList.tsx";
import { PART_LABELS } from "./parts/partLists.ts";
import { SaveBuild } from "./SaveBuild.tsx";

export interface HandlePanelProps {
  readonly book: Book;
  /** as stored */
  readonly stored: Build;
  /** with the parts that are tried; its settings as they stand without a change */
  readonly build: Build;
  /** the build as tried, for what its values rest on */
  readonly resolved: Resolved | null;
  readonly settings: Settings;
  /** handles of which the stored build knows no value */
  readonly unset: readonly HandleKey[];
  /** what it comes to, in a few words: stands beside the setting on a phone */
  readonly effect: string | null;
}

/** Settings of the weather, which are rarely moved: they fold. */
const AIR: readonly HandleKey[] = ["temperature", "pressure"];

interface Slots {
  readonly panel: Omit<HandlePanelProps, "effect">;
  readonly picked: HandleKey | PartTried;
  readonly round: number;
  readonly refuse: (key: HandleKey, isRefused: boolean) => void;
}

const slotClass = (key: HandleKey | PartTried, { picked }: Slots) =>
  key === picked ? "handle-slot picked-handle" : "handle-slot";

const partSlots = (slots: Slots) =>
  PARTS_TRIED.map((part) => {
    const { book, stored, build } = slots.panel;
    return (
      <div key={part} class={slotClass(part, slots)}>
        <PartList book={book} stored={stored} build={build} part={part} />
      </div>
    );
  });

const handleSlots = (handles: readonly HandleKind[], slots: Slots) =>
  handles.map((handle) => {
    const { book, build, resolved, settings, unset } = slots.panel;
    return (
      <div key={handle.key} class={slotClass(handle.key, slots)}>
        <Handle
          handle={handle}
          was={settings[handle.key]}
          unset={unset.includes(handle.key)}
          round={slots.round}
          onRefused={(isRefused) => slots.refuse(handle.key, isRefused)}
          basis={<Basis book={book} build={build} resolved={resolved} handle={handle.key} />}
        />
      </div>
    );
  });

/** Parts and settings, each in its slot: none of them but the one that is moved is laid out anew with a move. */
function useSlots(handles: readonly HandleKind[], slots: Slots) {
  const { book, stored, build, resolved, settings, unset } = slots.panel;
  const same = [handles, book, build, resolved, settings, unset, slots.picked, slots.round, slots.refuse];
  const isAir = ({ key }: HandleKind) => AIR.includes(key);
  const parts = useMemo(() => partSlots(slots), [book, stored, build, slots.picked]);
  const main = useMemo(
    () =>
      handleSlots(
        handles.filter((handle) => !isAir(handle)),
        slots,
      ),
    same,
  );
  const air = useMemo(() => handleSlots(handles.filter(isAir), slots), same);
  return { parts, main, air };
}

/** Which settings hold something that is refused. */
function useRefused() {
  const [refused, setRefused] = useState<ReadonlySet<HandleKey>>(new Set());
  const refuse = useCallback(
    (key: HandleKey, isRefused: boolean) =>
      setRefused((before) => {
        if (before.has(key) === isRefused) return before;
        return new Set(isRefused ? [...before, key] : [...before].filter((each) => each !== key));
      }),
    [],
  );
  return { refused, refuse, forget: () => setRefused(new Set()) };
}

const NO_GAP = HANDLES.filter(({ key }) => key !== "gap");

/** What can be changed: parts of the book first, then numbers. On a phone one at a time stays within the thumb's reach. */
export function HandlePanel({ effect, ...panel }: HandlePanelProps) {
  const { book, stored, build, settings } = panel;
  const isPropeller = book.rotors.find(({ id }) => id === build.rotor)?.data.kind === "propeller";
  const handles = isPropeller ? NO_GAP : HANDLES;
  const [chosen, setPicked] = useState<HandleKey | PartTried>(isPropeller ? "mass" : "gap");
  const picked = isPropeller && chosen === "gap" ? "mass" : chosen;
  const [round, setRound] = useState(0);
  const { refused, refuse, forget } = useRefused();
  const narrow = useMedia(NARROW);
  const tried = isChanged(changes.value);
  const reset = () => {
    settle({});
    forget();
    setRound(round + 1);
  };
  const { parts, main, air } = useSlots(handles, { panel, picked, round, refuse });
  const picker = useMemo(
    () => <HandlePicker picked={picked} handles={handles} onPick={setPicked} />,
    [picked, handles],
  );
  const isAirTried = AIR.some((key) => changes.value[key] !== undefined);
  return (
    <section class="page-side match-handles" aria-label="What if" ref={stuckBelow}>
      <div class="handles-head">
        <h2>What if…</h2>
        {picker}
        {(tried || refused.size > 0) && (
          <button type="button" class="plain" onClick={reset}>
            Reset all
          </button>
        )}
      </div>
      <LeftOutOfAddress />
      {isPropeller && (
        <p class="quiet small">No gap to set: a propeller presses by its thrust, with or without a skirt.</p>
      )}
      {parts}
      {main}
      <details class="handles-air" open={narrow || isAirTried}>
        <summary>
          Air:{" "}
          {handles
            .filter(({ key }) => AIR.includes(key))
            .map((handle) => withUnit(handle, changes.value[handle.key] ?? settings[handle.key]))
            .join(", ")}
        </summary>
        {air}
      </details>
      {effect && <div class="handle-effect">{effect}</div>}
      {tried && <SaveBuild book={book} build={stored} />}
    </section>
  );
}

/** What the address asked for and could not be put in. */
function LeftOutOfAddress() {
  return (
    <>
      {leftOut.value.map(({ handle, text }) => (
        <Status key={handle.key} class="near small">
          {handle.label}: the address asks for {text === "" ? "nothing" : `“${text}”`} in SI units; allowed:{" "}
          {range(handle)}. It stays as the build has it.
        </Status>
      ))}
      {unknownParts.value.map((part) => (
        <Status key={part} class="near small">
          {PART_LABELS[part]}: the book doesn't have the one that the address asks for. It stays as the build
          has it.
        </Status>
      ))}
    </>
  );
}

interface HandlePickerProps {
  readonly picked: HandleKey | PartTried;
  readonly handles: typeof HANDLES;
  readonly onPick: (picked: HandleKey | PartTried) => void;
}

/** On a phone: which setting or part is within the thumb's reach. */
function HandlePicker({ picked, handles, onPick }: HandlePickerProps) {
  return (
    <label class="handle-picker">
      <span class="visually-hidden">Which setting</span>
      <select value={picked} onChange={(event) => onPick(event.currentTarget.value as HandleKey | PartTried)}>
        {PARTS_TRIED.map((part) => (
          <option key={part} value={part}>
            {PART_LABELS[part]}
          </option>
        ))}
        {handles.map((handle) => (
          <option key={handle.key} value={handle.key}>
            {handle.label}
          </option>
        ))}
      </select>
    </label>
  );
}
