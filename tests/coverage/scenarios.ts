/** What a simulated maker does, and what is true of the maker's vehicle. */
export interface Scenario {
  readonly name: string;
  /** readings of the curve test, of the leak test, of the motor test under load */
  readonly readings: readonly [number, number, number];
  /** gains of the instruments as the tests state them, standard uncertainty [%] */
  readonly stated: Readonly<Record<"pressure" | "speed" | "flow" | "current" | "voltage" | "load", number>>;
  /** times as large as stated that the gains really are; 1: the statements are true */
  readonly truth: number;
  /** a bleed plate that was never calibrated meters the flow; else a flow meter */
  readonly plate: boolean;
  readonly leakTest: boolean;
  readonly pulls: number;
  /** of a single pull [-]; null: drawn as calibrations hold it true */
  readonly pullScatter: number | null;
  /** how well the gap is known that the record states [m] */
  readonly gapUncertainty: number;
  /** K_lip over what the edge says, and friction along the lip over what the law says: standard uncertainty of each [-] */
  readonly lip: number;
  /** size at which the curve was tested [m]; null: the vehicle's own */
  readonly testedDiameter: number | null;
  /** κ; null: drawn as a prediction holds it true, log-normal with 0.10 */
  readonly pullFactor: number | null;
  /** the gap comes back to 5 % when the skirt is set anew after its leak test */
  readonly setAnew: boolean;
  /** a wave in ψ that no polynomial of the fit follows, share of ψ₀ [-] */
  readonly wave: number;
  /** statements are true and the truth drawn as the method says: 86 to 94 % are wanted */
  readonly honest: boolean;
}

const GOOD: Scenario = {
  name: "good tests, skirt set anew, no pulls",
  readings: [10, 7, 6],
  stated: { pressure: 1, speed: 0.3, flow: 2, current: 1, voltage: 0.5, load: 0.5 },
  truth: 1,
  plate: false,
  leakTest: true,
  pulls: 0,
  pullScatter: null,
  gapUncertainty: 5e-5,
  lip: 0.15,
  testedDiameter: null,
  pullFactor: null,
  setAnew: true,
  wave: 0,
  honest: true,
};

const LARGE = { pressure: 3, speed: 1, flow: 5, current: 3, voltage: 1, load: 2 };

/** One a row of the table. */
export const SCENARIOS: readonly Scenario[] = [
  GOOD,
  { ...GOOD, name: "the same with five pulls", pulls: 5 },
  { ...GOOD, name: "few readings", readings: [6, 4, 3] },
  { ...GOOD, name: "few readings, two pulls", readings: [6, 4, 3], pulls: 2 },
  { ...GOOD, name: "large gains of the instruments", stated: LARGE },
  { ...GOOD, name: "large gains, five pulls", stated: LARGE, pulls: 5 },
  { ...GOOD, name: "a plate that was not calibrated", plate: true },
  { ...GOOD, name: "gap stated to 0.05 mm, no leak test", leakTest: false },
  { ...GOOD, name: "gap measured to 0.02 mm, no leak test", leakTest: false, gapUncertainty: 2e-5 },
  { ...GOOD, name: "a rotor tested at 80 mm, printed at 50 mm", testedDiameter: 0.08 },
  { ...GOOD, name: "gap set, five pulls, no leak test", leakTest: false, pulls: 5, gapUncertainty: 8e-5 },
  { ...GOOD, name: "a curve that is no polynomial, five pulls", wave: 0.02, pulls: 5 },
  { ...GOOD, name: "five pulls that scatter by 2.5 %", pulls: 5, pullScatter: 0.025, honest: false },
  { ...GOOD, name: "five pulls that scatter by 10 %", pulls: 5, pullScatter: 0.1, honest: false },
  { ...GOOD, name: "pull factor 0.85, no pulls", pullFactor: 0.85, honest: false },
  { ...GOOD, name: "pull factor 0.85, five pulls", pullFactor: 0.85, pulls: 5, honest: false },
  { ...GOOD, name: "pull factor 1.15, no pulls", pullFactor: 1.15, honest: false },
  { ...GOOD, name: "pull factor 1.15, five pulls", pullFactor: 1.15, pulls: 5, honest: false },
  {
    ...GOOD,
    name: "lip law twice as far off as held",
    leakTest: false,
    gapUncertainty: 2e-5,
    lip: 0.3,
    honest: false,
  },
  { ...GOOD, name: "instruments five times as wrong as stated, no pulls", truth: 5, honest: false },
];
