import { describe, expect, it } from "vitest";
import { detailOf } from "#shared/decide/choose/detail.ts";
import { prepare } from "#shared/decide/choose/prepare.ts";
import type { Wants } from "#shared/decide/choose/problem.ts";
import { rankedAll } from "#shared/decide/choose/rank.ts";
import { solveChunk } from "#shared/decide/choose/solveChunk.ts";
import { motor, pack, question, rotor, skirt, WANTS } from "./questions.ts";

const choices = (wants: Partial<Wants>) => {
  const prepared = prepare(
    question({
      motors: [motor("unpriced", { price: undefined }), motor("priced")],
      rotors: [rotor("swept", { sizes: rotor("swept").sizes.slice(1, 2) })],
      packs: [pack("two", 2)],
      skirts: [skirt("lip", { gaps: [0.0003] })],
      duties: [1],
      wants: { ...WANTS, mostPrice: null, ...wants },
    }),
  );
  const results = [solveChunk(prepared, 0, prepared.count)];
  return { prepared, results, details: [0, 1].map((index) => detailOf(prepared, results, index)) };
};

describe("the price of a combination", () => {
  it("is the sum, with every part's price known; not known, with one missing, and comes last", () => {
    const { prepared, results, details } = choices({});
    expect(details.map(({ values }) => values.price)).toEqual([null, 12 + 2 + 12 + 1]);
    expect([...rankedAll(prepared, results, { column: "price", want: "least" })]).toEqual([1, 0]);
    expect(details[0].broken.map(({ limit }) => limit)).not.toContain("price");
  });

  it("keeps a combination out, not known, where a price is asked for, and says that it isn't known", () => {
    const { details } = choices({ mostPrice: 1000 });
    expect(details[0].broken).toContainEqual({ limit: "price", value: null, allowed: 1000 });
    expect(details[1].broken.map(({ limit }) => limit)).not.toContain("price");
  });
});
