import { describe, expect, it } from "vitest";
import { hashOf, Pairing } from "#server/lan/pairing.ts";

const MINUTE = 60_000;

/** Codes on a clock that stands until it is moved. */
function codes() {
  let now = 1000;
  const pairing = new Pairing(() => now);
  const pass = (minutes: number) => {
    now += minutes * MINUTE;
  };
  return { pairing, pass };
}

const WRONG = "0".repeat(32);

describe("a pairing code", () => {
  it("has 128 bits, and is another each time", () => {
    const { pairing } = codes();
    const made = Array.from({ length: 20 }, () => pairing.newCode());
    for (const code of made) expect(code).toMatch(/^[0-9a-f]{32}$/);
    expect(new Set(made).size).toBe(20);
  });

  it("is kept as a hash alone", () => {
    const { pairing } = codes();
    const code = pairing.newCode();
    expect(hashOf("abc")).toBe("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"); // FIPS 180-4, example of SHA-256
    expect(JSON.stringify(Object.values(pairing))).not.toContain(code);
  });

  it("as typed, in groups, with capitals and with letters in the place of digits: right", () => {
    const { pairing } = codes();
    const grouped = (text: string) => text.replace(/(.{4})(?=.)/g, "$1 ");
    for (const write of [grouped, (text: string) => text.toUpperCase().replaceAll("0", "O"), String]) {
      expect(pairing.attempt(write(pairing.newCode()), "peer")).toEqual({ is: "right" });
    }
  });

  it("pairs once: the second time it is wrong", () => {
    const { pairing } = codes();
    const code = pairing.newCode();
    expect(pairing.attempt(code, "peer").is).toBe("right");
    expect(pairing.attempt(code, "peer").is).toBe("wrong");
  });

  it("is good for ten minutes and no longer, and no more once another was made", () => {
    const { pairing, pass } = codes();
    const first = pairing.newCode();
    pass(9.99);
    expect(pairing.attempt(first, "peer").is).toBe("right");
    const second = pairing.newCode();
    pass(10);
    expect(pairing.attempt(second, "peer").is).toBe("wrong");
    const third = pairing.newCode();
    pairing.newCode();
    expect(pairing.attempt(third, "peer").is).toBe("wrong");
  });

  it("before any was made: none is right", () => {
    expect(codes().pairing.attempt("", "peer").is).toBe("wrong");
  });
});

describe("wrong codes", () => {
  it("of one peer: after five even the right one isn't listened to for ten minutes, that of another is", () => {
    const { pairing, pass } = codes();
    for (let sent = 0; sent < 5; sent++) expect(pairing.attempt(WRONG, "one").is).toBe("wrong");
    pass(4);
    expect(pairing.attempt(pairing.newCode(), "one")).toEqual({ is: "too-many", wait: 360 });
    expect(pairing.attempt(pairing.newCode(), "other").is).toBe("right");
    pass(6);
    expect(pairing.attempt(pairing.newCode(), "one").is).toBe("right");
  });

  it("of many peers: after fifty nobody is listened to for ten minutes", () => {
    const { pairing, pass } = codes();
    for (let peer = 0; peer < 50; peer++) expect(pairing.attempt(WRONG, `peer ${peer}`).is).toBe("wrong");
    expect(pairing.attempt(pairing.newCode(), "another").is).toBe("too-many");
    pass(10);
    expect(pairing.attempt(pairing.newCode(), "another").is).toBe("right");
  });

  it("that aren't listened to aren't counted: the wait ends though they go on", () => {
    const { pairing, pass } = codes();
    for (let sent = 0; sent < 5; sent++) pairing.attempt(WRONG, "one");
    pass(9);
    for (let sent = 0; sent < 100; sent++) expect(pairing.attempt(WRONG, "one").is).toBe("too-many");
    pass(1);
    expect(pairing.attempt(WRONG, "one").is).toBe("wrong");
  });
});
