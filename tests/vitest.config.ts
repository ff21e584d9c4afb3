import { accessSync, constants, statfsSync } from "node:fs";
import { availableParallelism, tmpdir } from "node:os";
import { defineConfig } from "vitest/config";

/** Linux' disk in memory, and the room on it that all books of a run find enough [bytes]. */
const IN_MEMORY = "/dev/shm";
const ROOM = 1e9;

/** Where the tests' books lie: every acknowledged write waits for its disk, and one in memory doesn't keep it waiting. */
function folderOfBooks(): string {
  try {
    accessSync(IN_MEMORY, constants.W_OK);
    const { bavail, bsize } = statfsSync(IN_MEMORY);
    return bavail * bsize > ROOM ? IN_MEMORY : tmpdir();
  } catch (error) {
    if (error instanceof Error) return tmpdir();
    throw error;
  }
}

const APART = "tests/**/*.apart.test.ts";
/** What people come for, from beginning to end: all of the browser that `npm test` opens. */
const TASKS = "tests/browser/tasks.test.ts";

process.env.TMPDIR ??= folderOfBooks();

/** The test rooms; each is a vitest project, so that one of them can be run alone: `npx vitest run --config tests/vitest.config.ts --project unit`. */
export default defineConfig({
  root: new URL("..", import.meta.url).pathname,
  test: {
    // One worker a core: vitest leaves one idle by itself, which is half of a machine of two.
    maxWorkers: availableParallelism(),
    // A test that hangs ends red; none comes near this, however busy the machine.
    testTimeout: 120_000,
    hookTimeout: 120_000,
    setupFiles: ["tests/support/matchers.ts", "tests/support/sameCases.ts"],
    projects: [
      {
        extends: true,
        test: {
          name: "unit",
          isolate: false,
          include: ["tests/{units,shared,client,house}/**/*.test.{ts,tsx}"],
          exclude: [APART],
        },
      },
      {
        extends: true,
        // A file that puts another module in a module's place can share none with other files.
        test: { name: "apart", isolate: true, include: [APART] },
      },
      {
        extends: true,
        test: { name: "published", isolate: false, include: ["tests/published/**/*.test.ts"] },
      },
      {
        extends: true,
        test: {
          name: "server",
          isolate: false,
          include: ["tests/{server,durability}/**/*.test.ts"],
        },
      },
      {
        extends: true,
        test: {
          name: "browser",
          isolate: false,
          include: [process.env.BROWSER_TESTS === "tasks" ? TASKS : "tests/browser/**/*.test.ts"],
          globalSetup: ["tests/browser/globalSetup.ts"],
          testTimeout: 480_000,
        },
      },
    ],
  },
});
