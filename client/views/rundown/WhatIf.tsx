import { namedAttitudes } from "../../../shared/book/attitudes.ts";
import type { Build } from "../../../shared/model/build.ts";
import type { StoredOf } from "../../../shared/model/record.ts";
import type { Keep } from "../../../shared/physics/rundown/input.ts";
import { SettingField } from "../../ui/SettingField.tsx";
import type { Tried } from "./asked.ts";
import { CyclePanel } from "./CyclePanel.tsx";
import { START_CHARGE, TARGET_MARGIN } from "./handles.ts";
import { KeepPanel } from "./keep/KeepPanel.tsx";
import type { Asked } from "./question.ts";

/** The slider's end for a margin; more can be typed. */
const SLIDER_MARGIN = 4;

export interface WhatIfProps {
  readonly build: StoredOf<"builds">;
  /** what is set here, in the place of the build's own */
  readonly set: Tried;
  readonly asked: Required<Asked>;
  /** what a controller is first asked to keep */
  readonly first: Keep;
  readonly onAsk: (part: Partial<Tried>) => void;
}

/** Attitudes that a cycle can name. */
function placesOf(build: Build) {
  return [{ title: "Floor", angle: 0 }, ...namedAttitudes(build).filter(({ angle }) => angle > 0)];
}

/** The settings of a run: its charge, the margin wanted, how the throttle is run, where the vehicle is meanwhile. */
export function WhatIf({ build, set, asked, first, onAsk }: WhatIfProps) {
  const { startCharge, targetMargin, cycle, keep } = asked;
  const own = build.data.targetMargin;
  const places = placesOf(build.data);
  return (
    <section class="page-side" aria-label="What if">
      <h2>What if…</h2>
      <SettingField
        label="Charge at the start"
        spec={START_CHARGE}
        value={startCharge}
        slider={{ min: 1, max: 100, step: 1 }}
        hint="state of charge when it is set down"
        onValue={(charge) => onAsk({ startCharge: charge === 1 ? null : charge })}
      />
      <SettingField
        label="Margin wanted"
        spec={TARGET_MARGIN}
        value={targetMargin}
        slider={{ min: 1, max: Math.max(SLIDER_MARGIN, targetMargin), step: 0.05 }}
        hint={set.targetMargin === null ? "as in the build" : `the build wants ${own}\u202f×`}
        onValue={(value) => onAsk({ targetMargin: value === own ? null : value })}
      />
      <KeepPanel
        wish={keep}
        places={places.filter(({ angle }) => angle > 0)}
        wanted={targetMargin}
        first={first}
        onWish={(wish) => onAsk({ keep: wish })}
      />
      <CyclePanel build={build} cycle={cycle} places={places} onCycle={(typed) => onAsk({ cycle: typed })} />
    </section>
  );
}
