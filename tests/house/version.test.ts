import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { describe, expect, it } from "vitest";
import { version as served } from "#server/version.ts";

const text = (path: string) => readFileSync(resolve(import.meta.dirname, "../..", path), "utf8");
const { version } = JSON.parse(text("package.json")) as { version: string };

describe("the version of package.json", () => {
  it("is what the server says, and the newest heading of the changelog", () => {
    expect(served).toBe(version);
    expect(/^## (.+)$/m.exec(text("docs/changelog.md"))?.[1]).toBe(version);
  });
});
