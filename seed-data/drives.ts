const NOTE = "Invented for the demo.";
const SCALE = { load: { absolute: { value: 0.5, unit: "g" } } };

/** Weighings of one thing, the same each time but for the last digit [g]. */
const weighIn = (title: string, what: object, readings: readonly number[], date: string): object => ({
  kind: "weigh-in",
  title,
  date,
  ...what,
  instruments: SCALE,
  rows: readings.map((value) => ({ reading: { value, unit: "g" } })),
  note: NOTE,
});

type Leg = readonly [outcome: string, angle: number, driving: boolean, charge: number];

/** What a drive did, attitude by attitude; charge in per cent, from the charger's count afterwards. */
const drive = (title: string, build: string, legs: readonly Leg[], date: string): object => ({
  kind: "run-log",
  title,
  date,
  build,
  rows: legs.map(([outcome, angle, driving, charge]) => ({
    outcome,
    angle: { value: angle, unit: "°" },
    driving,
    charge: { value: charge, unit: "%" },
  })),
  note: NOTE,
});

/** The demo's weigh-ins, as its parts and builds are; and its drives, which end as the demo's own truth has it. */
export function drives(): unknown[] {
  return [
    weighIn(
      "Bell motor on the letter scale",
      { weighed: "part", motor: "bell-18" },
      [19, 18.9, 19.1],
      "2026-03-02",
    ),
    weighIn(
      "Pane crawler ready to drive",
      { weighed: "build", build: "pane-crawler" },
      [560, 561, 559.5],
      "2026-03-20",
    ),
    drive(
      "Side pane and roof pane",
      "pane-crawler",
      [
        ["held", 90, true, 90],
        ["held", 153, true, 70],
        ["held", 153, false, 60],
      ],
      "2026-03-21",
    ),
    drive(
      "Under the roof panes, tethered",
      "roof-crawler",
      [
        ["held", 180, false, 90],
        ["slid", 120, true, 80],
      ],
      "2026-04-11",
    ),
  ];
}
