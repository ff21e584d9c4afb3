import { describe, expect, it } from "vitest";
import { predictFile } from "#server/predictFile.ts";
import { freshBook } from "./support/api.ts";

const crawler = {
  rotor: { diameter: 0.044, psi: [1.05, -1.5, -32], lambda: [0.022, 1.1], phiMax: 0.16 },
  motor: { kv: 4900, resistance: 0.19, frictionTorque: 6e-4 },
  pack: { series: 2, openCircuitVoltage: 3.9, cellResistance: 0.026 },
  skirt: { perimeter: 0.36, area: 0.008, gap: 0.0006, land: 0.003 },
  vehicle: { mass: 0.9 },
};

function run(words: readonly string[], content = JSON.stringify(crawler)) {
  let [out, complaint] = ["", ""];
  const code = predictFile(words, {
    read: () => new TextEncoder().encode(content),
    out: (text) => {
      out += text;
    },
    complain: (text) => {
      complaint += text;
    },
  });
  return { code, out, complaint };
}

describe("npm run predict", () => {
  it("of a build in a file: the JSON that the server answers", async () => {
    const { code, out } = run(["build.json"]);
    const { body } = await freshBook().api.post("/api/v1/predict").send(crawler);
    expect([code, JSON.parse(out)]).toEqual([0, body]);
  });

  it("with --text: verdict, pull, point and margins in a few lines", () => {
    const { code, out } = run(["--text", "build.json"]);
    expect(code).toBe(0);
    expect(out).toMatch(/Pull .*\nRotor \d+ rpm/);
    expect(out).toMatch(/180°: parked \d\.\d\d ×, driving \d\.\d\d ×/);
  });

  it.each([
    ["a body that is refused", JSON.stringify({ ...crawler, vehicle: { mass: -1 } }), /vehicle\.mass/],
    ["no JSON", "{", /JSON/],
    [
      "numbers that have no answer",
      JSON.stringify({ ...crawler, skirt: { ...crawler.skirt, joint: { span: 1, depth: 0.001 } } }),
      /span/,
    ],
  ])("of %s: code 1, and the message alone", (_what, content, message) => {
    const { code, out, complaint } = run(["build.json"], content);
    expect([code, out]).toEqual([1, ""]);
    expect(complaint).toMatch(message);
  });

  it.each([[[]], [["a", "b"]], [["--json", "a"]], [["--help"]]])(
    "asked %j: code 2, and how it is used",
    (words) => {
      const { code, complaint } = run(words);
      expect(code).toBe(2);
      expect(complaint).toMatch(/^Usage/);
    },
  );
});
