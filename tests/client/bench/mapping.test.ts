import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { guessMapping, mappingFor } from "#client/views/bench/import/mapping.ts";
import { readCsv } from "#tests/support/importing.ts";

const fixture = (path: string) => readFileSync(new URL(`../../fixtures/${path}`, import.meta.url), "utf8");

const guessed = (path: string) =>
  guessMapping(readCsv(fixture(path)).header).map(({ role, unit }) => [role, unit].join(" ").trim());

describe("guessMapping, headers of measured data", () => {
  it("reads rev/s, m³/s, the static one of two pressures and the density of the 600 rpm file", () => {
    expect(guessed("fan-three-speeds/600rpm.csv")).toEqual([
      "speed rev/s",
      "flow m³/s",
      "ignore",
      "pressure Pa",
      "density kg/m³",
    ]);
  });

  it("reads the nominal speeds of the 800 and 1000 rpm file", () => {
    expect(guessed("fan-three-speeds/800-1000rpm.csv")).toEqual(["speed rpm", "flow m³/s", "pressure Pa"]);
  });

  it("reads L/min and kPa of the small blower and leaves out standard errors and counts", () => {
    expect(guessed("small-blower/binned.csv")).toEqual([
      "speed rpm",
      "flow L/min",
      "pressure kPa",
      "ignore",
      "ignore",
    ]);
  });
});

describe("guessMapping, headers that people write", () => {
  it.each([
    ["pressure [mmH2O]", "pressure", "mmH2O"],
    ["Flow (m3/h)", "flow", "m3/h"],
    ["rpm", "speed", "rpm"],
    ["n_samples", "ignore", ""],
    ["V", "voltage", "V"],
    ["current_mA", "current", "mA"],
    ["I [A]", "current", "A"],
    ["torque_mNm", "torque", "mN·m"],
    ["open 2", "open", ""],
    ["set aside", "setAside", ""],
    ["Drehzahl [1/min]", "speed", "rpm"],
    ["time_s", "ignore", ""],
    ["", "ignore", ""],
  ] as const)("%j is %s in %j", (header, role, unit) => {
    expect(guessMapping([header])).toEqual([{ role, unit }]);
  });

  it("takes the first of two columns for one quantity and leaves the other out", () => {
    expect(guessMapping(["p_kPa", "p2_kPa", "dp_Pa"]).map(({ role }) => role)).toEqual([
      "pressure",
      "ignore",
      "ignore",
    ]);
  });

  it("takes the quantity's first unit where a header names none", () => {
    expect(mappingFor("flow", "reading")).toEqual({ role: "flow", unit: "L/s" });
  });
});

describe("two columns for one quantity", () => {
  it("a nominal value and one that was read: the reading counts, in either order; a nominal one alone counts", () => {
    const roles = (...header: string[]) => guessMapping(header, "thrust").map(({ role }) => role);
    expect(roles("V_nominal", "V")).toEqual(["ignore", "voltage"]);
    expect(roles("V", "V_nominal")).toEqual(["voltage", "ignore"]);
    expect(roles("rpm_nominal", "V")).toEqual(["speed", "voltage"]);
  });
});
