import { encode } from "uqr";
import { describe, expect, it } from "vitest";
import { devicesInWords } from "#client/views/bench/devices/DevicesView.tsx";
import { inGroups, pairingAddress, qrDrawing } from "#client/views/bench/devices/qr.ts";

const CODE = "0123456789abcdef0123456789abcdef";
const ADDRESS = "https://192.168.1.20:4311";

describe("a QR code, drawn", () => {
  it("has a square for each dark module, four of light around it, and the three corners that readers look for", () => {
    const text = pairingAddress(ADDRESS, CODE);
    const { path, size } = qrDrawing(text);
    const squares = [...path.matchAll(/M(\d+) (\d+)h1v1h-1z/g)].map(([, x, y]) => [Number(x), Number(y)]);
    const bare = encode(text, { ecc: "M", border: 0 });
    expect(size).toBe(bare.size + 8);
    // ISO/IEC 18004: the edge of version v has 17 + 4 v modules; at level M version 5 holds 84 bytes, version 4 62.
    expect(text.length).toBeGreaterThan(62);
    expect(bare.size).toBe(17 + 4 * 5);
    expect(squares).toHaveLength(bare.data.flat().filter(Boolean).length);
    for (const [x, y] of squares) expect(bare.data[y - 4][x - 4]).toBe(true);
    // A finder pattern: a dark ring of seven, a light one of five, a dark core of three.
    const isDark = (x: number, y: number) => squares.some(([a, b]) => a === x && b === y);
    for (const [left, top] of [
      [4, 4],
      [size - 11, 4],
      [4, size - 11],
    ])
      for (let y = 0; y < 7; y++)
        for (let x = 0; x < 7; x++) {
          const ring = Math.max(Math.abs(x - 3), Math.abs(y - 3));
          expect(isDark(left + x, top + y)).toBe(ring !== 2);
        }
  });
});

describe("what a device is shown", () => {
  it("the code, in groups of four", () => {
    expect(inGroups(CODE)).toBe("0123 4567 89ab cdef 0123 4567 89ab cdef");
  });

  it("the address, with the code where a browser doesn't send it", () => {
    const address = new URL(pairingAddress(ADDRESS, CODE));
    expect(address.pathname + address.search).toBe("/pair");
    expect(address.hash).toBe(`#${CODE}`);
  });

  it.each([
    [0, "No device is paired."],
    [1, "One device is paired."],
    [2, "Two devices are paired."],
    [14, "14 devices are paired."],
  ])("with %i paired: %s", (count, sentence) => {
    expect(devicesInWords(count)).toBe(sentence);
  });
});
