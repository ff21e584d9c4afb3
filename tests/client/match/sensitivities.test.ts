import { describe, expect, it } from "vitest";
import { replyTo } from "#client/views/match/sensitivities/answer.ts";
import {
  barsInWords,
  barsOf,
  barsSentence,
  barsTable,
  drawnBars,
  shareText,
  tiedText,
} from "#client/views/match/sensitivities/bars.ts";
import { inputName, withNames } from "#client/views/match/sensitivities/names.ts";
import { sensitivitiesOf } from "#shared/decide/sensitivities.ts";
import { PANE_CRAWLER, PANE_PROPELLER } from "#tests/support/paneCrawler.ts";

const pack = {
  series: 2,
  parallel: 1,
  openCircuitVoltage: 3.7,
  cellResistance: 0.026,
  wireResistance: 0.014,
};
const build = { ...PANE_CRAWLER, pack };
const found = {
  margin: 1.2,
  warnings: [],
  sensitivities: [
    { path: "rotor.psi", value: 1, elasticity: 1.567 },
    { path: "vehicle.mass", value: 0.85, elasticity: -1 },
    { path: "rotor.lambda", value: 1, elasticity: -0.45 },
    { path: "vehicle.track", value: 0.09, elasticity: 0 },
  ],
};
const shares = [
  { path: "rotor.psi.0 + rotor.psi.1 + rotor.lambda.0", share: 0.5 },
  { path: "vehicle.mass", share: 0.004 },
];

describe("barsOf", () => {
  const bars = barsOf(found, shares);

  it("names each input and finds its share, one of tied uncertainties together", () => {
    expect(bars.map(({ name, share }) => [name, share])).toEqual([
      ["Rotor pressure ψ", 0.5],
      ["Mass", 0.004],
      ["Rotor power λ", 0.5],
      ["Track width", null],
    ]);
    expect(bars[0].tied).toEqual(["Rotor power λ"]);
    expect(bars[1].tied).toEqual([]);
  });

  it("without an uncertainty: no shares, and none is spoken of", () => {
    expect(barsOf(found, null).every(({ share }) => share === null)).toBe(true);
    expect(tiedText(barsOf(found, null))).toBeNull();
  });

  it("draws those alone that move anything", () => {
    expect(drawnBars(bars).map(({ path }) => path)).not.toContain("vehicle.track");
  });

  it("is read aloud: the largest in a sentence, all with their signs, ties explained", () => {
    expect(barsSentence(bars)).toBe(
      "1\u202f% more rotor pressure ψ is 1.57\u202f% more margin: it moves it most.",
    );
    expect(barsInWords(drawnBars(bars))).toBe(
      "Per cent of margin per per cent of: rotor pressure ψ +1.57, mass −1.00 and rotor power λ −0.45.",
    );
    expect(shareText(bars[0])).toBe("50\u202f%† of the uncertainty");
    expect(shareText(bars[1])).toBe("under 1\u202f% of the uncertainty");
    expect(tiedText(bars)).toBe(
      "† The same share for numbers whose uncertainties are tied: rotor power λ and rotor pressure ψ.",
    );
  });

  it("stands in a table with all of it", () => {
    expect(barsTable(bars).rows[0]).toEqual([
      "Rotor pressure ψ",
      1.567,
      { value: 50, uncertainty: 1 },
      "Rotor power λ",
    ]);
    expect(barsTable(bars).rows.length).toBe(4);
  });
});

describe("inputName", () => {
  it("has a name for every input of either kind of build", () => {
    const { skirt: _skirt, ...rest } = build;
    const every = [build, { ...rest, rotor: PANE_PROPELLER }].flatMap((each) =>
      sensitivitiesOf(each, { attitude: "worst", mode: "driving" }).sensitivities.map(({ path }) => path),
    );
    for (const path of every) expect(inputName(path), path).not.toBe(path);
    expect(inputName("skirt.openings.1.area")).toBe("Opening 2, area");
    expect(inputName("skirt.honeycombs.0.length")).toBe("Honeycomb 1, length of the tubes");
  });

  it("stands in the place of a path in a note", () => {
    expect(withNames("Left out: skirt.roughness, supply.driverResistance.")).toBe(
      "Left out: surface roughness, speed controller resistance.",
    );
  });
});

describe("replyTo", () => {
  it("answers, or says in words why not", () => {
    const wanted = { attitude: 180, mode: "parked" } as const;
    expect(replyTo({ build, wanted })).toHaveProperty("answered");
    const reply = replyTo({ build: { ...build, pack: { ...pack, series: 0 } }, wanted });
    expect(reply).toEqual({ problem: expect.stringMatching(/^pack\.series is 0/) });
  });
});
