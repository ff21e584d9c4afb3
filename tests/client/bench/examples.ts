import type { BenchTest } from "#shared/model/tests/index.ts";
import { benchTest } from "#shared/model/tests/index.ts";

/** Invented tests of the glasshouse crawler, one of each kind and more, as the API would store them. */
const typed = (value: number, unit: string) => ({ value, unit });

export const PULL: BenchTest = benchTest.parse({
  kind: "pull",
  title: "side pane, second rotor",
  date: "2026-03-14",
  rotor: "b8",
  diameter: typed(42, "mm"),
  motor: "m1",
  pack: "p1",
  skirt: "s1",
  surface: "glass",
  direction: "straight-off",
  rigMass: typed(12.5, "g"),
  duty: typed(100, "%"),
  instruments: { load: { absolute: typed(1, "g") } },
  rows: [
    { held: typed(410, "g"), letGo: typed(430, "g"), voltage: typed(3.92, "V") },
    { held: typed(4, "N"), letGo: null, gap: typed(0.5, "mm"), setAside: "lip folded under" },
  ],
});

export const PLATE_CURVE: BenchTest = benchTest.parse({
  kind: "curve",
  title: 'bleed plate, "shut" to open',
  date: "2026-03-15",
  air: { temperature: typed(18, "°C"), pressure: typed(1004, "hPa"), humidity: typed(70, "%") },
  note: "first line\nsecond line, with a comma",
  rotor: "b8",
  diameter: typed(42, "mm"),
  motor: "m1",
  flowFrom: "bleed-plate",
  plate: {
    holes: [
      { diameter: typed(3, "mm"), thickness: typed(2, "mm"), count: 8, edge: "sharp" },
      {
        diameter: typed(0.25, "in"),
        thickness: typed(2, "mm"),
        count: 4,
        edge: "rounded",
        dischargeCoefficient: 0.82,
      },
    ],
  },
  instruments: { pressure: { percent: 2, absolute: typed(5, "Pa") } },
  rows: [
    { speed: typed(24000, "rpm"), pressure: typed(120, "mmH2O"), open: [0, 0], current: typed(1.2, "A") },
    { speed: typed(400, "Hz"), pressure: typed(95.5, "mmH2O"), open: [4, 0] },
    {
      speed: typed(24000, "rpm"),
      pressure: typed(-1e-7, "mmH2O"),
      open: [8, 4],
      setAside: "plate lifted, redo",
    },
  ],
});

export const KNOWN_CURVE: BenchTest = benchTest.parse({
  kind: "curve",
  date: "2026-03-16",
  rotor: "b8",
  diameter: typed(38, "mm"),
  flowFrom: "known-flow",
  rows: [
    {
      speed: typed(600, "rpm"),
      pressure: typed(60, "Pa"),
      flow: typed(0.5, "L/s"),
      density: typed(1.19, "kg/m3"),
    },
    { speed: typed(606, "rpm"), pressure: typed(50, "Pa"), flow: typed(1.5, "L/s") },
    {
      speed: typed(1000, "rpm"),
      pressure: typed(160, "Pa"),
      flow: typed(1, "L/s"),
      torque: typed(0.2, "mN·m"),
    },
  ],
});

export const MOTOR: BenchTest = benchTest.parse({
  kind: "motor",
  date: "2026-03-17",
  motor: "m1",
  resistance: typed(0.35, "Ω"),
  rows: [
    { voltage: typed(3, "V"), current: typed(0.3, "A"), speed: typed(22000, "rpm"), noLoad: true },
    { voltage: typed(4.1, "V"), current: typed(2.2, "A"), speed: typed(25000, "rpm") },
  ],
});

export const LEAK: BenchTest = benchTest.parse({
  kind: "leak",
  date: "2026-03-18",
  skirt: "s1",
  surface: "glass",
  gap: typed(0.6, "mm"),
  flowFrom: "bleed-plate",
  plate: { holes: [{ diameter: typed(5, "mm"), thickness: typed(1, "mm"), count: 6 }] },
  rows: [
    { pressure: typed(50, "Pa"), platePressure: typed(12, "Pa"), open: [6] },
    { pressure: typed(0.8, "kPa"), platePressure: typed(210, "Pa"), open: [6] },
  ],
});

export const FRICTION: BenchTest = benchTest.parse({
  kind: "friction",
  date: "2026-03-19",
  surface: "glass",
  contact: "wheels",
  rows: [
    { held: typed(33, "°"), slid: typed(35, "°") },
    { held: null, slid: typed(37, "°") },
  ],
});

export const THRUST: BenchTest = benchTest.parse({
  kind: "thrust",
  title: "stand by the window",
  date: "2026-03-20",
  rotor: "p5",
  diameter: typed(127, "mm"),
  motor: "m1",
  instruments: { thrust: { absolute: typed(0.5, "g") } },
  rows: [
    { speed: typed(6000, "rpm"), thrust: typed(40, "g"), torque: typed(3, "mN·m") },
    { speed: typed(12000, "rpm"), thrust: typed(1.6, "N"), current: typed(4, "A"), throttle: typed(70, "%") },
    { speed: typed(15000, "rpm"), thrust: typed(250, "g"), setAside: "stand shook" },
  ],
});

export const DISCHARGE: BenchTest = benchTest.parse({
  kind: "discharge",
  date: "2026-03-21",
  pack: "p1",
  across: "plug",
  end: "stopped",
  rows: [
    { charge: typed(0, "mAh"), voltage: typed(4.18, "V"), current: typed(0, "A") },
    { charge: typed(120, "mAh"), voltage: typed(3.94, "V"), current: typed(2600, "mA") },
    {
      charge: typed(0.12, "Ah"),
      voltage: typed(4.05, "V"),
      current: typed(0, "A"),
      setAside: "rest cut short",
    },
  ],
});

export const RIDE_HEIGHT: BenchTest = benchTest.parse({
  kind: "ride-height",
  title: "feeler gauges",
  date: "2026-03-22",
  gear: "foam",
  instruments: { height: { absolute: typed(0.02, "mm") } },
  rows: [
    { load: typed(-1, "N"), height: typed(0.7, "mm") },
    { load: typed(0, "g"), height: typed(0.6, "mm") },
    { load: typed(300, "g"), height: typed(400, "µm") },
    { load: typed(2, "kg"), height: typed(0, "mm"), setAside: "sat on it" },
  ],
});

export const WEIGH_IN: BenchTest = benchTest.parse({
  kind: "weigh-in",
  date: "2026-03-23",
  weighed: "assembly",
  rotor: "b8",
  diameter: typed(38, "mm"),
  motor: "m1",
  what: "four screws",
  instruments: { load: { absolute: typed(0.1, "g") } },
  rows: [
    { reading: typed(31.2, "g") },
    { reading: typed(0.0314, "kg") },
    { reading: typed(35, "g"), setAside: "draught" },
  ],
});

export const RUN_LOG: BenchTest = benchTest.parse({
  kind: "run-log",
  title: "first pane",
  date: "2026-03-24",
  build: "pane-crawler",
  rows: [
    {
      outcome: "held",
      angle: typed(90, "°"),
      driving: true,
      voltage: typed(7.6, "V"),
      time: typed(2, "min"),
    },
    { outcome: "slid", angle: typed(153, "°"), charge: typed(40, "%"), time: typed(5, "min") },
    { outcome: "fell", angle: typed(180, "°"), setAside: "hand in the way" },
  ],
});

export const EXAMPLES = [
  PULL,
  PLATE_CURVE,
  KNOWN_CURVE,
  MOTOR,
  LEAK,
  FRICTION,
  THRUST,
  DISCHARGE,
  RIDE_HEIGHT,
  WEIGH_IN,
  RUN_LOG,
] as const;
