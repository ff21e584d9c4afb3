import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { LockedError } from "#server/store/patience.ts";
import { freshBook } from "./support/api.ts";

describe("GET /health", () => {
  it("of a server whose data file can be read: says that it works, and of which version it is", async () => {
    const { body, headers } = await freshBook().api.get("/api/v1/health").expect(200);
    const { version } = JSON.parse(readFileSync(new URL("../../package.json", import.meta.url), "utf8"));
    expect(body).toEqual({ status: "ok", version });
    expect(headers["cache-control"]).toBe("no-store");
  });

  it("of a server whose data file another program holds: 503, and when to ask again", async () => {
    const { api, store } = freshBook();
    store.isDemo = () => {
      throw new LockedError();
    };
    const { headers } = await api.get("/api/v1/health").expect(503);
    expect(headers["retry-after"]).toBe("5");
  });
});
