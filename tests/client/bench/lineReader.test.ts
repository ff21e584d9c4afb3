import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { LineReader, linesOf } from "#client/views/bench/import/lineReader.ts";

const rowsOf = (text: string) => [...linesOf(text).lines];

describe("a file read piece by piece", () => {
  it("is the same wherever it is cut: within a quote, a line's end, a head line", () => {
    const text = '# title = "a, b"\r\n\r\nn,p,"note"\r\n1,2,"two\r\nlines, ""quoted"""\r\n3,4,\r5,6,x\n';
    const whole = linesOf(text);
    fc.assert(
      fc.property(fc.uniqueArray(fc.integer({ min: 1, max: text.length - 1 }), { maxLength: 8 }), (cuts) => {
        // the head and the first line come in the first piece, as they do in a file read by half a megabyte
        const places = [0, ...cuts.filter((cut) => cut > 40).sort((a, b) => a - b), text.length];
        const reader = new LineReader(",");
        for (let i = 1; i < places.length; i++) reader.push(text.slice(places[i - 1], places[i]));
        const pieces = reader.done();
        expect([...pieces.lines]).toEqual([...whole.lines]);
        expect(pieces.head).toEqual({ title: "a, b" });
      }),
    );
  });

  it("numbers lines as an editor does, blank ones and those within cells counted", () => {
    expect(rowsOf('a,b\n\n"x\ny",1\n2,3').map(({ line }) => line)).toEqual([1, 3, 5]);
  });

  it("with a quote that is never closed: reads quotes as text and says in which line", () => {
    const read = linesOf('tool,p\n12" fan,3\n"14 fan,4\n16 fan,5\n');
    expect(read.openQuote).toBe(3);
    expect([...read.lines].map(({ cells }) => cells)).toEqual([
      ["tool", "p"],
      ['12" fan', "3"],
      ['"14 fan', "4"],
      ["16 fan", "5"],
    ]);
  });

  it("of a million lines: gives any of them, by its place", () => {
    const count = 1_000_000;
    const reader = new LineReader(undefined);
    const piece = 50_000;
    reader.push("t_s,I_A\n");
    for (let from = 0; from < count; from += piece)
      reader.push(Array.from({ length: piece }, (_, i) => `${from + i},${(from + i) % 7}\n`).join(""));
    const { lines } = reader.done();
    expect(lines.length).toBe(count + 1);
    expect(lines.at(765_432)).toEqual({ line: 765_433, cells: ["765431", String(765_431 % 7)] });
  });
});
