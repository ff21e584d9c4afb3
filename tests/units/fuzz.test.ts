import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { DIMENSION_NAMES, type DimensionName, dimension } from "#shared/units/dimensions.ts";
import { formatQuantity } from "#shared/units/format.ts";
import { parseNumber } from "#shared/units/number.ts";
import { parseQuantity, toSI, UnitError } from "#shared/units/parse.ts";
import { conversionOf } from "#shared/units/readUnit.ts";
import { SPELLINGS } from "#shared/units/symbols.ts";

/** Every spelling of every quantity: the table's labels, with mega in the place of milli as well, and all single symbols that are of it. */
const UNITS = DIMENSION_NAMES.flatMap((name) => {
  const labels = dimension(name).shown.map(({ label }) => label);
  const symbols = SPELLINGS.map(({ text }) => text).filter((text) => conversionOf(name, text));
  const mega = labels.map((label) => label.replace(/^m/, "M")).filter((text) => conversionOf(name, text));
  return [...new Set([...labels, ...symbols, ...mega])].map((unit) => ({ name, unit }));
});
const unitOfAny = fc.constantFrom(...UNITS);
const number = fc.double({ min: -1e6, max: 1e6, noNaN: true }).filter((x) => !Object.is(x, -0));

const read = (text: string, name: DimensionName) => toSI(parseQuantity(text, name), name);

describe("every unit in every spelling, and back", () => {
  it("any number before it, with a space or without, with point or comma: reads as number and unit", () => {
    expect(UNITS.length).toBeGreaterThan(300);
    fc.assert(
      fc.property(unitOfAny, number, fc.constantFrom("", " ", "\u2009"), ({ name, unit }, x, space) => {
        const text = `${x}${space === "" && unit === "1" ? " " : space}${unit}`;
        expect(parseQuantity(text, name)).toEqual({ value: x, unit });
        const decimals = /^(-?\d+)\.(\d{1,2}|\d{4,})$/.exec(String(x));
        if (decimals) expect(parseQuantity(`${decimals[1]},${decimals[2]} ${unit}`, name).value).toBe(x);
      }),
      { numRuns: 2000 },
    );
  });

  it("what is shown is read as what is shown", () => {
    const shown = fc.constantFrom(
      ...DIMENSION_NAMES.flatMap((name) => dimension(name).shown.map(({ label }) => ({ name, label }))),
    );
    fc.assert(
      fc.property(
        shown,
        fc.double({ min: -1e5, max: 1e5, noNaN: true }).filter((x) => Math.abs(x) > 1e-3),
        fc.integer({ min: 2, max: 6 }),
        ({ name, label }, value, digits) => {
          const { factor, offset } = conversionOf(name, label) ?? { factor: Number.NaN, offset: 0 };
          const text = formatQuantity(value * factor + offset, name, { unit: label, digits });
          const plain = text.slice(0, label === "1" ? undefined : -label.length).replaceAll("\u202f", "");
          const typed = parseQuantity(text, name, label);
          expect(typed).toEqual({ value: Number(plain.replace("\u2212", "-")), unit: label });
        },
      ),
      { numRuns: 2000 },
    );
  });
});

const flipped = (unit: string, flips: readonly boolean[]) =>
  [...unit]
    .map((letter, i) => (flips[i % flips.length] ? letter.toUpperCase() : letter.toLowerCase()))
    .join("");

describe("a unit in any case", () => {
  it("means what it means as it is written, what the same letters mean in that case, or nothing", () => {
    fc.assert(
      fc.property(
        unitOfAny,
        fc.array(fc.boolean(), { minLength: 1, maxLength: 6 }),
        ({ name, unit }, flips) => {
          const other = flipped(unit, flips);
          const sameLetters = UNITS.filter(
            (each) => each.name === name && each.unit.toLowerCase() === unit.toLowerCase(),
          ).map((each) => conversionOf(name, each.unit));
          expect(sameLetters).toContainEqual(conversionOf(name, other));
          const told = new Set(sameLetters.map((each) => each?.factor)).size;
          if (told === 1) expect(conversionOf(name, other)).toEqual(conversionOf(name, unit));
        },
      ),
      { numRuns: 5000 },
    );
  });

  it("is told apart by case only between milli and mega", () => {
    const apart = UNITS.filter(({ name, unit }) =>
      UNITS.some(
        (each) =>
          each.name === name &&
          each.unit.toLowerCase() === unit.toLowerCase() &&
          conversionOf(name, each.unit)?.factor !== conversionOf(name, unit)?.factor,
      ),
    );
    for (const { unit } of apart) expect(unit).toMatch(/^m/i);
    expect(apart.length).toBeGreaterThan(0);
  });
});

describe("what is no unit", () => {
  const start = fc.constantFrom("×", "·", "*", "x9", "⋅", "∙", "1", "90", ".5", "½", "-3", "+2", "9.");
  it("never begins with a number or a sign of multiplication, whatever follows", () => {
    fc.assert(
      fc.property(
        start,
        unitOfAny,
        fc.constantFrom("", " "),
        fc.boolean(),
        (sign, { name, unit }, space, bare) => {
          const text = bare ? sign : `${sign}${space}${unit}`;
          if (name === "fraction" && text.trim() === "1") return;
          expect(conversionOf(name, text), text).toBeNull();
        },
      ),
      { numRuns: 3000 },
    );
  });

  it("never reads a second number as a part of the unit: 110×90 mm is no length", () => {
    const sign = fc.constantFrom("×", " × ", "x", "·", "*", " ");
    const natural = fc.integer({ min: 1, max: 9999 });
    fc.assert(
      fc.property(natural, sign, natural, unitOfAny, (a, between, b, { name, unit }) => {
        if (between === " " && b > 99 && b < 1000) return;
        expect(() => parseQuantity(`${a}${between}${b} ${unit}`, name)).toThrow(UnitError);
      }),
      { numRuns: 3000 },
    );
  });

  it("any text is read or refused in words, never anything else", () => {
    const text = fc.oneof(
      fc.string(),
      fc.string({ unit: "grapheme" }),
      fc.string({ unit: fc.constantFrom(...'0123456789.,/ ×·k½"°-+emMglbozinPaHz') }),
    );
    fc.assert(
      fc.property(text, fc.constantFrom(...DIMENSION_NAMES), (typed, name) => {
        try {
          expect(Number.isFinite(read(typed, name))).toBe(true);
        } catch (error) {
          expect(error).toBeInstanceOf(UnitError);
          expect((error as UnitError).message).toMatch(
            /(Read ".*"|Nothing was typed); allowed: .* for example "/su,
          );
        }
      }),
      { numRuns: 5000 },
    );
  });
});

describe("a number with thousands apart", () => {
  it("reads as the number, by thin space, space or apostrophe, with point or comma", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -9_999_999, max: 9_999_999 }),
        fc.constantFrom("\u2009", "\u202f", "\u00a0", " ", "'", "’"),
        fc.constantFrom("", ".5", ",5"),
        (whole, apart, decimals) => {
          const grouped = String(whole).replace(/\B(?=(\d{3})+$)/g, apart);
          expect(parseNumber(grouped + decimals)).toBe(Number(`${whole}${decimals.replace(",", ".")}`));
        },
      ),
    );
  });
});
