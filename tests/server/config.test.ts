import { isAbsolute } from "node:path";
import { describe, expect, it } from "vitest";
import { configFrom } from "#server/config.ts";

describe("configFrom", () => {
  it("without anything set: this machine alone, port 4310, the data folder", () => {
    const { port, host, file } = configFrom({ HOST: "" });
    expect({ port, host }).toEqual({ port: 4310, host: "127.0.0.1" });
    expect(file).toMatch(/data.gripcurve\.db$/);
    expect(isAbsolute(file)).toBe(true);
  });

  it("with all set: takes them", () => {
    const config = configFrom({ PORT: "8080", HOST: "::1", GRIPCURVE_DB: "/srv/book.db" });
    expect(config).toMatchObject({ port: 8080, host: "::1", file: "/srv/book.db" });
  });

  it.each(["http", "-1", "70000", "1.5", " "])('with PORT "%s": refuses and says what is allowed', (PORT) => {
    expect(() => configFrom({ PORT })).toThrow(/PORT is ".*"; allowed: .*for example 4310/);
  });
});
