import { isAbsolute } from "node:path";
import { describe, expect, it } from "vitest";
import { configFrom, exposureOf } from "#server/config.ts";

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

  it("with names in GRIPCURVE_HOSTS: takes them beside HOST, in lower case and without brackets", () => {
    const { names } = configFrom({
      HOST: "Bench.local",
      GRIPCURVE_HOSTS: " shop.lan, [FD00::7],,192.168.1.20",
    });
    expect(names).toEqual(["bench.local", "shop.lan", "fd00::7", "192.168.1.20"]);
  });

  it.each(["bench.local:4310", "http://bench.local", "*", "a b"])(
    'with "%s" in GRIPCURVE_HOSTS: refuses and says what is allowed',
    (GRIPCURVE_HOSTS) => {
      expect(() => configFrom({ GRIPCURVE_HOSTS })).toThrow(
        /GRIPCURVE_HOSTS holds ".*"; allowed: .*bench\.local/,
      );
    },
  );
});

describe("configFrom, the local network", () => {
  const lanPort = (environment: Record<string, string>, args = ["--lan"]) =>
    configFrom(environment, args).lanPort;

  it("without --lan: isn't served, whatever port is set for it", () => {
    expect(lanPort({ GRIPCURVE_LAN_PORT: "5000" }, [])).toBeNull();
  });

  it.each([
    [{}, 4311],
    [{ PORT: "8080" }, 8081],
    [{ PORT: "65535" }, 65_534],
    [{ PORT: "0" }, 0],
    [{ PORT: "8080", GRIPCURVE_LAN_PORT: "5000" }, 5000],
  ])("with --lan and %j: is served on port %s", (environment, port) => {
    expect(lanPort(environment)).toBe(port);
  });

  it("with --lan and HOST, which lets everybody in: refuses and says why", () => {
    expect(() => lanPort({ HOST: "0.0.0.0" })).toThrow(/HOST is 0\.0\.0\.0.*Leave HOST unset/);
    expect(lanPort({ HOST: "127.0.0.1" })).toBe(4311);
  });

  it("with a port that is none, or another word behind the command: refuses and says what is allowed", () => {
    expect(() => lanPort({ GRIPCURVE_LAN_PORT: "x" })).toThrow(/GRIPCURVE_LAN_PORT is "x"; allowed/);
    expect(() => configFrom({}, ["--lam"])).toThrow('"--lam" is not known; allowed: --lan');
  });
});

describe("configFrom, the request log", () => {
  it.each([
    [undefined, false],
    ["", false],
    ["requests", true],
  ])("with GRIPCURVE_LOG %j: %s", (GRIPCURVE_LOG, logs) => {
    expect(configFrom({ GRIPCURVE_LOG }).logsRequests).toBe(logs);
  });

  it("with anything else in GRIPCURVE_LOG: refuses and says what is allowed", () => {
    expect(() => configFrom({ GRIPCURVE_LOG: "all" })).toThrow(/GRIPCURVE_LOG is "all"; allowed: requests/);
  });
});

describe("configFrom, the daily copies", () => {
  it.each([
    [undefined, 7],
    ["", 7],
    ["0", 0],
    ["30", 30],
  ])("with GRIPCURVE_COPIES %j: keeps %s", (GRIPCURVE_COPIES, kept) => {
    expect(configFrom({ GRIPCURVE_COPIES }).dailyCopies).toBe(kept);
  });

  it.each(["-1", "2.5", "seven", "400"])(
    'with "%s" in GRIPCURVE_COPIES: refuses and says what is allowed',
    (GRIPCURVE_COPIES) => {
      expect(() => configFrom({ GRIPCURVE_COPIES })).toThrow(/GRIPCURVE_COPIES is ".*"; allowed: .* to 366/);
    },
  );
});

describe("exposureOf", () => {
  it.each([undefined, "localhost", "127.0.0.1", "127.0.0.2", "::1"])(
    "of HOST %s, which only this machine reaches: nothing to say",
    (HOST) => {
      expect(exposureOf(configFrom({ HOST }))).toBeNull();
    },
  );

  it.each(["0.0.0.0", "::", "192.168.1.20", "bench.local"])(
    "of HOST %s, which others reach: says what they can do, and the remedy",
    (HOST) => {
      const words = exposureOf(configFrom({ HOST }));
      expect(words).toContain(`HOST is ${HOST}`);
      expect(words).toMatch(/read, change and empty.*no password.*Leave HOST unset/);
    },
  );
});
