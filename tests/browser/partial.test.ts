import type { Page } from "playwright-core";
import { beforeAll, describe, expect, it } from "vitest";
import { eventually } from "./support/eventually.ts";
import { useOwnServer } from "./support/ownServer.ts";
import { PHONE, useScreens } from "./support/page.ts";
import { type PartialBook, partialBook } from "./support/partialBook.ts";

const screens = useScreens();
const server = useOwnServer();
let builds: PartialBook;

beforeAll(async () => {
  builds = await partialBook(server.address);
});

const VIEWS = ["match", "attitudes", "run-down"] as const;
const plain = (text: string | null) => (text ?? "").replace(/\s/g, " ");

/** Opens a view of a build and waits for its answer, whose panel comes after the page. */
async function open(view: string, id: string, options = {}): Promise<Page> {
  const page = await screens.open(`${server.address}/${view}/${id}`, options);
  await page.locator("main h1").first().waitFor();
  return page;
}
const answer = async (page: Page) => plain(await page.locator("main h1").first().textContent());
const marks = (page: Page) => page.locator(".answer-figures .mark").allTextContents();
const tests = (page: Page) => page.locator(".missing a.button").allTextContents();

describe("a build without friction", () => {
  it("in Match: pull, point and currents, the friction that the wall takes, no verdict, the tilt board named", async () => {
    const page = await open("match", builds.noFriction);
    await eventually(() => answer(page)).toMatch(
      /^It makes \d+ g of pull at \d+ Pa\. Whether it slides isn't known/,
    );
    await eventually(() => marks(page)).toContain("friction not known");
    const figures = async () => plain(await page.locator(".known-figures").textContent());
    for (const name of ["pressure", "flow", "rotor speed", "pack current", "winding"])
      await eventually(figures).toContain(name);
    const row = page.locator(".partial-holds tr", { hasText: "Wall" }).first();
    const wall = async () => plain(await row.textContent());
    await eventually(wall).toMatch(/not knownneeds μ ≥ 0\.\d\d/);
    await eventually(wall).not.toContain("holds");
    await eventually(() => tests(page)).toEqual(["Log a friction test"]);
  });

  it("in Match, a friction tried: the whole answer, and back again with the field empty", async () => {
    const page = await open("match", builds.noFriction);
    const field = page.getByLabel("Wheel friction μ", { exact: true });
    await eventually(() => field.inputValue()).toBe("");
    await field.fill("0.7");
    await page
      .locator("main h1", { hasText: /^(Holds|Falls|Burns|Bursts|Not sure|Over a rating|Can't climb)/ })
      .waitFor();
    await eventually(() => page.locator(".match-picture svg[role=img]").count()).toBeGreaterThan(0);
    await eventually(async () =>
      plain(await page.locator("[data-handle=wheelFriction] .handle-basis").textContent()),
    ).toMatch(/^was not known/);
    await page.locator("[data-handle=wheelFriction]").getByRole("button").click();
    await page.locator("main h1", { hasText: "It makes" }).waitFor();
    await eventually(() => field.inputValue()).toBe("");
  });

  it("in Attitudes: the friction that every inclination takes", async () => {
    const page = await open("attitudes", builds.noFriction);
    await eventually(() => answer(page)).toMatch(
      /parked anywhere from floor to ceiling it needs μ of at least 0\.\d\d/,
    );
    await eventually(() => page.locator(".needed-friction tbody tr").count()).toBe(13);
    await eventually(() => tests(page)).toEqual(["Log a friction test"]);
  });

  it("in Attitudes, with a drive typed: the torque to climb, and no word on where the wheels slip", async () => {
    const page = await open("attitudes", builds.noFriction);
    await page.locator("summary", { hasText: "Torque to climb" }).click();
    const drive = [
      "Wheel diameter, mm",
      "Drive motors",
      "Gear ratio, motor turns a wheel turn",
      "Gear efficiency, %",
    ];
    for (const [i, text] of ["32", "2", "50", "60"].entries()) await page.getByLabel(drive[i]).fill(text);
    await page.getByLabel("Stall torque of one motor, mN·m").fill("4");
    const said = async () => plain(await page.locator(".attitude-drive-said").textContent());
    await eventually(said).toMatch(/^Hardest for the motors: .* of stall/);
    await eventually(said).toContain("Where the wheels slip isn't known");
  });

  it("in Run-down: the minutes, and pull at start and end", async () => {
    const page = await open("run-down", builds.noFriction);
    await eventually(() => answer(page)).toMatch(
      /^From a full charge it runs [\d.]+ minutes and its pull falls from \d+ g to \d+ g/,
    );
    await eventually(() => tests(page)).toEqual(["Log a friction test"]);
  });
});

describe("a build whose rotor has no λ", () => {
  it("in every view: pull at the tested speed and what it holds, the motor's current named", async () => {
    for (const view of VIEWS) {
      const page = await open(view, builds.noPower);
      await eventually(() => answer(page)).toMatch(
        /^Turned at [\d ]+ rpm as in its tests, it makes \d+ g of pull/,
      );
      await eventually(() => marks(page)).toContain("at tested speed");
      await eventually(async () => plain(await page.locator(".missing").textContent())).toContain(
        "log the motor's current",
      );
      await eventually(() => tests(page)).toEqual(["Log a curve test"]);
    }
  });
});

describe("a build whose pack has no curve", () => {
  it("in Match and Attitudes: stands at the cells' minimum, and says so", async () => {
    for (const view of ["match", "attitudes"]) {
      const page = await open(view, builds.noCell);
      await eventually(() => answer(page)).toMatch(
        /^With its cells at their minimum of 3\.20 V under load, it makes/,
      );
      await eventually(() => marks(page)).toContain("at minimum voltage");
      await eventually(() => tests(page)).toEqual(["Log a discharge test"]);
    }
  });

  it("in Run-down: says what it makes at the end, not how long until then", async () => {
    const page = await open("run-down", builds.noCell);
    await eventually(() => answer(page)).toMatch(
      /^At the end of its charge, .* How many minutes until then can't be said\.$/,
    );
    await eventually(() => tests(page)).toEqual(["Log a discharge test"]);
  });
});

describe("a vehicle whose drive isn't known", () => {
  it("in Attitudes: the verdicts stand; the drive panel says what is missing, and where the wheels slip", async () => {
    const page = await open("attitudes", "pane-crawler");
    await eventually(() => page.locator(".attitude-table tbody tr").count()).toBeGreaterThan(3);
    await page.locator("summary", { hasText: "Torque to climb" }).click();
    const said = async () => plain(await page.locator(".attitude-drive-said").textContent());
    await eventually(said).toMatch(/of this vehicle's drive, .*gear ratio.* are missing/);
    await eventually(said).toMatch(/wheels (grip at every angle|slip from)/);
  });

  it("in Run-down: driving margins by the wheels' grip, which says where its torque is asked", async () => {
    const page = await open("run-down", "pane-crawler");
    await page.locator(".fall-table").waitFor();
    await eventually(async () => plain(await page.locator(".fall-table caption").textContent())).toMatch(
      /Driving nose uphill, by the grip of its wheels.*; whether its drive has the torque is a question for Attitudes/,
    );
  });
});

describe("a build that lacks more than one thing", () => {
  it("in every view, ducted or propeller: says what is left and names each test, on a phone without sideways scrolling", async () => {
    for (const view of VIEWS)
      for (const [id, curve] of [
        [builds.nothing, "Log a curve test"],
        [builds.propeller, "Log a thrust test"],
      ]) {
        const page = await open(view, id, { viewport: PHONE });
        await eventually(() => answer(page)).toMatch(/^Turned at .* Whether it slides isn't known/);
        await eventually(() => marks(page)).toEqual(
          expect.arrayContaining(["at tested speed", "friction not known"]),
        );
        await eventually(() => tests(page)).toEqual([curve, "Log a discharge test", "Log a friction test"]);
        await eventually(() => page.evaluate(() => document.documentElement.scrollWidth)).toBe(PHONE.width);
      }
  });

  it("without any curve of its rotor: claims nothing, names the curve test", async () => {
    for (const view of VIEWS) {
      const page = await open(view, builds.noCurve);
      await eventually(() => answer(page)).toBe("Curveless crawler can't be answered for yet.");
      await eventually(() => tests(page)).toEqual(["Log a curve test"]);
    }
  });

  it("its parts in Curves: each opens and says what it can", async () => {
    const page = await open("curves", "");
    for (const link of ["rotors", "packs", "surfaces"]) {
      const list = await fetch(`${server.address}/api/v1/${link}`);
      const { items } = (await list.json()) as { items: { id: string }[] };
      for (const { id } of items) {
        await page.goto(`${server.address}/curves/${link}/${id}`);
        await page.locator("main h1").first().waitFor();
      }
    }
  });
});

describe("choosing among parts that lack something", () => {
  it("by the API: refuses with each part named, and the test that gives what it lacks", async () => {
    const of = async (id: string) => {
      const response = await fetch(`${server.address}/api/v1/builds/${id}`);
      return (
        (await response.json()) as { data: { motor: string; rotor: string; pack: string; skirt: string } }
      ).data;
    };
    const { motor, rotor, pack, skirt } = await of(builds.nothing);
    const response = await fetch(`${server.address}/api/v1/choose`, {
      method: "POST",
      headers: { "Content-Type": "application/json" },
      body: JSON.stringify({
        build: builds.nothing,
        motors: [motor],
        rotors: [{ rotor }],
        packs: [pack],
        skirts: [{ skirt }],
      }),
    });
    expect(response.status).toBe(422);
    const { error } = (await response.json()) as { error: { fields: { path: string; message: string }[] } };
    expect(error.fields.map(({ path }) => path)).toEqual(["rotors.0", "packs.0", "skirts.0"]);
    const said = error.fields.map(({ message }) => message).join(" ");
    for (const test of [
      "log the motor's current in its curve tests",
      "log a discharge test",
      "tilt the vehicle",
    ])
      expect(said).toContain(test);
  });
});
