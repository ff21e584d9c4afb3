import type { TestKind } from "../../../../shared/model/tests/index.ts";

/** How a file of each kind may begin; invented readings. */
export const EXAMPLES: Readonly<Record<TestKind, string>> = {
  curve: "rpm, flow [L/s], pressure [Pa]\n24000, 0, 1250",
  thrust: "rpm, thrust [g], current [A]\n12000, 140, 5.1",
  pull: "held [g], let go [g], voltage [V]\n410, 430, 3.9",
  motor: "voltage [V], current [A], rpm, no load\n3.7, 0.31, 27600, yes",
  leak: "suction [Pa], flow [L/s]\n420, 1.6",
  friction: "held [°], slid [°]\n33, 35",
  discharge: "charge [mAh], voltage [V], current [A]\n120, 3.94, 2.6",
  "weigh-in": "reading [g]\n412.3",
  "run-log": "outcome, angle [°], driving, voltage [V]\nheld, 153, yes, 7.6",
  "ride-height": "load [g], height of the lip [mm]\n0, 0.80",
};
