import { describe, expect, it } from "vitest";
import { asTyped, refusalSentence } from "#client/views/parts/refusal.ts";
import { rotorForm } from "#client/views/parts/specs/rotor.ts";
import { skirtForm } from "#client/views/parts/specs/skirt.ts";

const at = (path: string, message = "too large") => ({ path, message });

describe("the sentence of a refusal", () => {
  it("with every message beside its field, rows of a list and doubts among them: points there, without a path", () => {
    const sentence = "Nothing was saved: look at the marked fields.";
    expect(refusalSentence(rotorForm, [at("geometry.widthRatio"), at("sizes.0.diameter")], "no")).toBe(
      sentence,
    );
    expect(refusalSentence(skirtForm, [at("uncertainty.gap")], "no")).toBe(sentence);
  });

  it("with a message that has no field here: says it", () => {
    expect(refusalSentence(rotorForm, [at("sizes"), at("geometry", "All four or none.")], "no")).toMatch(
      /marked fields\. All four or none\.$/,
    );
    expect(refusalSentence(rotorForm, [at("elsewhere", "It is odd.")], "no")).toBe(
      "Nothing was saved. It is odd.",
    );
  });

  it("of no field at all: as the server says it", () => {
    expect(refusalSentence(rotorForm, [], "The server does not answer.")).toBe("The server does not answer.");
  });
});

describe("a message that quotes the stored number", () => {
  it("of a quantity typed in another unit: quotes what was typed before it", () => {
    const said = [at("mass", "Read -0.005; allowed: kg, ≥ 0, at most 50.")];
    expect(asTyped(said, { mass: { value: -5, unit: "g" } })[0].message).toBe(
      "Read -5 g, that is -0.005; allowed: kg, ≥ 0, at most 50.",
    );
  });

  it("of a quantity typed in that very unit, of a bare number and of a missing one: stays", () => {
    const said = [
      at("kv", "Read -5; allowed: rpm/V, > 0."),
      at("series", "Read -5; allowed: 1."),
      at("mass", "Missing."),
    ];
    const values = { kv: { value: -5, unit: "rpm/V" }, series: "-5", mass: null };
    expect(asTyped(said, values)).toEqual(said);
  });

  it("of a value that may be lacking: speaks of an empty field, not of null", () => {
    const said = [at("vehicle.jetArea", "Read 0; allowed: m², > 0, or null.")];
    expect(asTyped(said, {})[0].message).toBe("Read 0; allowed: m², > 0, or empty.");
  });
});
