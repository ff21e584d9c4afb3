import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";

const text = (path: string): string => readFileSync(new URL(`../../${path}`, import.meta.url), "utf8");

interface Locked {
  readonly license?: string;
  readonly dev?: boolean;
  readonly devOptional?: boolean;
  readonly hasInstallScript?: boolean;
}

const manifest = JSON.parse(text("package.json")) as {
  readonly dependencies: Readonly<Record<string, string>>;
  readonly devDependencies: Readonly<Record<string, string>>;
  readonly allowScripts: Readonly<Record<string, boolean>>;
};
const { packages } = JSON.parse(text("package-lock.json")) as {
  readonly packages: Readonly<Record<string, Locked>>;
};
const page = text("docs/dependencies.md");
const [, inProgram, forTests, licences] = page.split(/^## /m);

/** Names of a table's first column. */
const listed = (section: string): string[] =>
  [...section.matchAll(/^\| (?!package|---)([^|]+) \|/gm)].flatMap(([, names]) => names.split(", "));

const named = (sentence: RegExp): string[] => (sentence.exec(licences)?.[1] ?? "").split(", ");
const ANYWHERE = named(/under one of: ([^;]+?)\. For/);
const IN_TESTS = named(/alone also: (.+?)\. Where/);

/** @returns whether a licence, or one of those that a package offers, is allowed */
function isAllowed(licence: string, isForTests: boolean): boolean {
  const allowed = isForTests ? [...ANYWHERE, ...IN_TESTS] : ANYWHERE;
  const offered = licence.replace(/[()]/g, "").split(" OR ");
  return offered.some((each) => each.split(" AND ").every((part) => allowed.includes(part)));
}

describe("docs/dependencies.md", () => {
  it("names every package of the program, with its reason, and no other", () => {
    expect(listed(inProgram).sort()).toEqual(Object.keys(manifest.dependencies).sort());
  });

  it("names every package for building and testing, with its reason, and no other", () => {
    expect(listed(forTests).sort()).toEqual(Object.keys(manifest.devDependencies).sort());
  });
});

describe("every package that is installed", () => {
  const installed = Object.entries(packages).filter(([path]) => path.startsWith("node_modules/"));

  it("is under a licence that the page allows", () => {
    expect(ANYWHERE).toContain("MIT");
    const wrong = installed.filter(
      ([, { license = "none", dev = false, devOptional = false }]) => !isAllowed(license, dev || devOptional),
    );
    expect(wrong.map(([path, { license }]) => `${path}: ${license}`)).toEqual([]);
  });

  it("runs no script when it is installed, but for those that are allowed by name", () => {
    const scripts = installed.flatMap(([path, { hasInstallScript }]) =>
      hasInstallScript ? [path.replace(/^.*node_modules\//, "")] : [],
    );
    const allowed = Object.keys(manifest.allowScripts);
    expect(scripts.filter((name) => !allowed.includes(name) && name !== "fsevents")).toEqual([]);
  });
});
