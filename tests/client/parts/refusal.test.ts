import { describe, expect, it } from "vitest";
import { refusalSentence } from "#client/views/parts/refusal.ts";
import { rotorForm } from "#client/views/parts/specs/rotor.ts";
import { skirtForm } from "#client/views/parts/specs/skirt.ts";

const at = (path: string, message = "too large") => ({ path, message });

describe("the sentence of a refusal", () => {
  it("with every message beside its field, rows of a list and uncertainties among them: points there, without a path", () => {
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
