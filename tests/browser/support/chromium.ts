import { execFileSync } from "node:child_process";
import { accessSync, constants, existsSync } from "node:fs";
import { delimiter, isAbsolute, join } from "node:path";

/** Browsers without windows: a page in one takes half the processor time of a page in a browser that draws its own frame. */
const SHELLS = ["chromium-headless-shell", "chrome-headless-shell"];
const NAMES = [
  "chromium",
  "chromium-browser",
  "google-chrome",
  "google-chrome-stable",
  "msedge",
  "microsoft-edge",
];
/** Where browsers lie that are not on the PATH: macOS and Windows. */
const ELSEWHERE = [
  "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
  "/Applications/Chromium.app/Contents/MacOS/Chromium",
  "/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge",
  "C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe",
  "C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe",
];

function isExecutable(file: string): boolean {
  try {
    accessSync(file, constants.X_OK);
    return true;
  } catch (error) {
    if (error instanceof Error) return false;
    throw error;
  }
}

function onPath(name: string): string | null {
  const folders = (process.env.PATH ?? "").split(delimiter).filter(Boolean);
  return folders.map((folder) => join(folder, name)).find(isExecutable) ?? null;
}

function asked(): string | null {
  const wish = process.env.CHROMIUM_PATH;
  if (!wish) return null;
  const found = isAbsolute(wish) ? wish : onPath(wish);
  if (found && isExecutable(found)) return found;
  throw new Error(`CHROMIUM_PATH is "${wish}", which is no program that can be run.`);
}

const firstOf = (names: readonly string[]): string | null =>
  names.map(onPath).find((found) => found !== null) ?? null;

const installed = (): string | null => firstOf(NAMES) ?? ELSEWHERE.find(isExecutable) ?? null;

/** On Debian and as root the package manager may bring one; null where it can't. */
function installOnDebian(name: string): string | null {
  if (!existsSync("/etc/debian_version") || process.getuid?.() !== 0) return null;
  const run = (...args: string[]) =>
    execFileSync("apt-get", ["-q", "-y", "-o", "Acquire::Retries=0", ...args], {
      stdio: "ignore",
      env: { ...process.env, DEBIAN_FRONTEND: "noninteractive" },
    });
  try {
    run("update");
    run("install", "--no-install-recommends", name, "fonts-dejavu-core");
  } catch (error) {
    // Without a network, or where another package is being installed: a browser that is there will do.
    if (error instanceof Error) return null;
    throw error;
  }
  return onPath(name);
}

/**
 * The browser that the tests drive: the one asked for, a shell, or any other that is there.
 *
 * @returns path of a Chromium, Chrome or Edge
 * @throws {Error} that says how to get one
 */
export function findChromium(): string {
  const found =
    asked() ?? firstOf(SHELLS) ?? installOnDebian(SHELLS[0]) ?? installed() ?? installOnDebian(NAMES[0]);
  if (found) return found;
  throw new Error(
    "The browser tests need Chromium (best its headless shell), Chrome or Edge: install one, or set CHROMIUM_PATH to its program, for example CHROMIUM_PATH=/usr/bin/chromium.",
  );
}
