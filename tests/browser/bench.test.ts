import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { exportCsv } from "#client/views/bench/list/exportCsv.ts";
import { benchTest } from "#shared/model/tests/index.ts";
import { axeFindings } from "./support/audit.ts";
import { eventually } from "./support/eventually.ts";
import { useOwnServer } from "./support/ownServer.ts";
import { PHONE, useScreens } from "./support/page.ts";

const screens = useScreens();
const REFUSED = /Failed to load resource/;

const server = useOwnServer();

const fixture = (path: string) => new URL(`../fixtures/${path}`, import.meta.url).pathname;
const at = (path: string) => server.address + path;

async function ask<T>(path: string, init?: RequestInit): Promise<T> {
  const headers = { "Content-Type": "application/json", ...init?.headers };
  const response = await fetch(at(`/api/v1${path}`), { ...init, headers });
  return (await response.json()) as T;
}

interface Stored {
  readonly id: string;
  readonly revision: number;
  readonly data: Record<string, unknown> & { rows: Record<string, { value: number; unit: string }>[] };
}

const cell = (page: Page, name: string) => page.getByLabel(name, { exact: true });
const save = (page: Page, name: RegExp | string = "Save the test") =>
  page.getByRole("button", { name }).click();

/** The files' rotors are larger than the one they are put down to here: their pressures are asked about. */
async function confirmIfAsked(page: Page): Promise<void> {
  const isRight = page.getByRole("button", { name: "It is right, save it" });
  await isRight.or(page.locator(".bench-saved")).waitFor();
  if (await isRight.isVisible()) await isRight.click();
}

/** @returns true where nothing sticks out of the screen sideways */
const fits = (page: Page) =>
  page.evaluate(() => document.documentElement.scrollWidth <= document.documentElement.clientWidth);

/** A family of the test's own, so that an import leaves the demo's curves alone. */
const newRotor = (name: string) =>
  ask<Stored>("/rotors", { method: "POST", body: JSON.stringify({ name, sizes: [{ diameter: 0.07 }] }) });

describe("Bench, a pull test on a phone", () => {
  it("is logged by taps, one a load, set up as the last one, and found again after the server was started anew", async () => {
    const page = await screens.open(at("/bench/new/pull"), {
      viewport: PHONE,
      hasTouch: true,
      allowed: /ERR_CONNECTION_REFUSED/,
    });
    const load = cell(page, "Load added");
    await eventually(() => load.evaluate((input) => input === document.activeElement)).toBe(true);
    await load.fill("400");
    await page.getByRole("button", { name: "Held at 400 g" }).tap();
    await load.fill("0.3 N");
    await page.getByRole("button", { name: /^Let go/ }).tap();
    await cell(page, "Voltage, pull 1").fill("3.92");
    await load.fill("410");
    await page.keyboard.press("Enter");
    await eventually(() => page.locator(".bench-pad-total").textContent()).toMatch(/Pull 2: 410 g held/);
    await load.fill("20");
    await page.getByRole("button", { name: "Let go at 430 g" }).tap();
    await page.getByRole("button", { name: "Take the last one back" }).tap();
    await page.getByRole("button", { name: "Let go at 430 g" }).tap();
    await eventually(() => page.locator(".bench-pad .bench-figures").textContent()).toMatch(
      /\d\sN to .*\sg\).*Predicted/,
    );
    await page.getByLabel("Title").fill("evening pull, side pane");
    expect(await fits(page)).toBe(true);
    // a whole pull is saved by Enter
    await load.focus();
    await page.keyboard.press("Enter");
    await page.locator(".bench-saved").waitFor();
    await eventually(() => page.locator(".bench-saved").textContent()).toMatch(/2 pulls: held 400–410\s?g/);

    await server.restart();
    await page.goto(at("/bench?q=evening"));
    const found = page.locator(".bench-test");
    await found.first().waitFor();
    await eventually(() => found.count()).toBe(1);
    await eventually(() => found.textContent()).toMatch(/evening pull, side pane.*held 400–410/);
  });

  it("has Save above a soft keyboard", async () => {
    const page = await screens.open(at("/bench/new/pull"), { viewport: PHONE, hasTouch: true });
    const bottom = () =>
      page.locator(".bench-save").evaluate((bar) => bar.getBoundingClientRect().bottom - window.innerHeight);
    expect(await bottom()).toBeLessThanOrEqual(1);
    await page.evaluate(() => {
      const seen = window.visualViewport;
      if (!seen) return;
      Object.defineProperty(seen, "height", { value: window.innerHeight - 300 });
      seen.dispatchEvent(new Event("resize"));
    });
    await eventually(bottom).toBeCloseTo(-300, 0);
  });

  it("keeps what was typed, through a look at another view and a reload, until it is saved or discarded", async () => {
    const page = await screens.open(at("/bench/new/pull"), { viewport: PHONE });
    await cell(page, "Load added").fill("123");
    await page.getByRole("button", { name: "Held at 123 g" }).click();
    await page.getByRole("link", { name: "Curves" }).click();
    await page.waitForURL(/\/curves/);
    await page.goto(at("/bench/new/pull"));
    await eventually(() => page.locator(".bench-pad-total").textContent()).toMatch(/Pull 1: 123 g held/);
    await page.getByRole("button", { name: "Discard" }).click();
    await page.goto(at("/bench/new/pull"));
    await eventually(() => page.locator(".bench-pad-total").textContent()).toMatch(/Pull 1: no load yet/);
  });
});

describe("Bench, a table of readings on a laptop", () => {
  it("goes on by Enter and arrows, takes a block from a spreadsheet, and draws each row as it is typed", async () => {
    const page = await screens.open(at("/bench/new/pull"));
    const focused = () => page.evaluate(() => document.activeElement?.getAttribute("aria-label") ?? "");
    const type = (text: string) => page.keyboard.type(text);
    const press = (key: string) => page.keyboard.press(key);
    await cell(page, "pull 1, held").click();
    await type("300");
    await press("Tab");
    await type("330");
    await press("Enter");
    await eventually(focused).toBe("pull 2, held");
    await type("310");
    await press("ArrowRight");
    expect(await focused()).toBe("pull 2, let go");
    await press("ArrowUp");
    expect(await focused()).toBe("pull 1, let go");
    expect(await cell(page, "pull 1, let go").inputValue()).toBe("330 g");
    await page.evaluate(() => {
      const clipboardData = new DataTransfer();
      clipboardData.setData("text/plain", "let go [kg]\theld [kg]\n0.35\t0.32\n0.36\t0.33\n");
      const paste = new ClipboardEvent("paste", { clipboardData, bubbles: true, cancelable: true });
      document.activeElement?.dispatchEvent(paste);
    });
    await eventually(() => page.locator(".bench-pasted").textContent()).toMatch(/^2 rows pasted/);
    expect(await cell(page, "pull 2, held").inputValue()).toBe("0.33 kg");
    await eventually(() => page.locator(".bench-running .layer-brackets path").count()).toBeGreaterThan(0);
    await page.getByRole("button", { name: "Undo the paste" }).click();
    expect(await cell(page, "pull 2, held").inputValue()).toBe("310 g");
  });
});

describe("Bench, nothing is ever gone", () => {
  it("a test is struck out with a reason and deleted; Ctrl+Z brings it back, also after a reload", async () => {
    const page = await screens.open(at("/bench?kind=motor"));
    const row = page.locator(".bench-test").first();
    const rows = page.locator(".bench-tests").first().locator(".bench-test");
    await row.waitFor();
    const count = await rows.count();
    await row.getByRole("button", { name: /^Strike out/ }).click();
    await page.getByLabel("Struck out because").fill("leads swapped");
    await page.getByRole("button", { name: "Strike it out" }).click();
    await eventually(() => row.textContent()).toContain("Struck out: leads swapped");
    await row.getByRole("button", { name: /^Delete/ }).click();
    await page.getByRole("button", { name: "Delete it" }).click();
    await eventually(() => rows.count()).toBe(count - 1);
    await page.reload();
    await rows.first().waitFor();
    await page.keyboard.press("Control+z");
    await eventually(() => rows.count()).toBe(count);
    await page.keyboard.press("Control+z");
    await eventually(() => page.locator(".bench-struck").count()).toBe(0);
    await page.keyboard.press("Control+Shift+z");
    await eventually(() => row.textContent()).toContain("Struck out: leads swapped");
    await row.getByRole("button", { name: /^Count again/ }).click();
    await eventually(() => page.locator(".bench-struck").count()).toBe(0);
  });
});

describe("Bench, nonsense in every field", () => {
  it.each(["pull", "curve", "leak", "motor", "friction"])(
    "a %s test says by each field what is wrong and loses nothing",
    async (kind) => {
      const page = await screens.open(at(`/bench/new/${kind}`));
      await page.locator(".bench-fold").evaluateAll((folds) => {
        for (const fold of folds) (fold as HTMLDetailsElement).open = true;
      });
      const more = page.locator(".bench-more button");
      for (let left = await more.count(); left > 0; left--) {
        await more.first().click();
        await eventually(() => more.count()).toBe(left - 1);
      }
      // A title may be any text, what an own instrument is asked is not stored; everything else is a quantity, a number or a count.
      const judged = page.locator(
        ".bench-form input[type=text]:not(#at-title input, .bench-at-sea input, .ear input, .wire input)",
      );
      const count = await judged.count();
      expect(count).toBeGreaterThan(3);
      for (let i = 0; i < count; i++) await judged.nth(i).fill("rubbish");
      await save(page);
      await page.locator(".bench-summary").waitFor();
      for (let i = 0; i < count; i++) {
        const input = judged.nth(i);
        expect(await input.inputValue()).toBe("rubbish");
        const place = input.locator("xpath=ancestor::*[starts-with(@id, 'at-')][1]");
        await eventually(() => place.locator(".field-error").first().textContent()).toMatch(
          /rubbish|needed|whole number/,
        );
      }
      const links = page.locator(".bench-summary a");
      await eventually(() => links.count()).toBeGreaterThanOrEqual(count - 1);
      await links.last().click();
      await eventually(() => page.locator("input:focus, textarea:focus, select:focus").count()).toBe(1);
    },
  );

  it("a number that the server refuses is said beside the field, with the server's limits", async () => {
    const page = await screens.open(at("/bench/new/friction"), { allowed: REFUSED });
    await cell(page, "slide 1, slid").fill("95°");
    await save(page);
    const place = page.locator("#at-rows-0-slid");
    await place.locator(".field-error").waitFor();
    await eventually(() => place.locator(".field-error").textContent()).toMatch(/95.*allowed/);
    expect(await cell(page, "slide 1, slid").inputValue()).toBe("95°");
  });
});

describe("Bench, a correction", () => {
  it("keeps what the test said before and shows the difference", async () => {
    const [test] = (await ask<{ items: Stored[] }>("/tests?kind=friction&limit=1")).items;
    const page = await screens.open(at(`/bench/${test.id}`));
    await cell(page, "slide 1, slid").fill("44.5°");
    await save(page, "Save the correction");
    await page.locator(".bench-saved").waitFor();
    await page.goto(at(`/bench/${test.id}`));
    const difference = page.locator(".bench-revisions tr", { hasText: "Slide 1, slid" });
    await difference.waitFor();
    const { value, unit } = test.data.rows[0].slid;
    await eventually(() => difference.textContent()).toBe(`Slide 1, slid${value} ${unit}44.5 °`);
  });

  it("made over someone else's says so, shows both field by field, and saves what is chosen of each", async () => {
    const [test] = (await ask<{ items: Stored[] }>("/tests?kind=motor&limit=1")).items;
    const page = await screens.open(at(`/bench/${test.id}`), { allowed: REFUSED });
    await page.getByLabel("Title").fill("mine");
    await page.getByLabel("Note").fill("noted here");
    const theirs = { ...test.data, title: "theirs", date: "2026-02-03" };
    await ask(`/tests/${test.id}`, {
      method: "PUT",
      headers: { "If-Match": `"${test.revision}"` },
      body: JSON.stringify(theirs),
    });
    await save(page, "Save the correction");
    await page.getByText("changed elsewhere meanwhile").waitFor();
    const row = (label: string) => page.locator(".merge tr", { hasText: label });
    await eventually(() => row("Title").textContent()).toBe("Title changed by both mine theirs");
    await eventually(() => row("Note").textContent()).toMatch(/^Note changed by you noted here /);
    await eventually(() => row("Date").textContent()).toMatch(/changed elsewhere/);
    expect(await axeFindings(page)).toEqual([]);
    const put = page.getByRole("button", { name: "Put the chosen ones into the form" });
    expect(await put.getAttribute("aria-disabled")).toBe("true");
    expect(await page.getByRole("textbox", { name: "Title" }).inputValue()).toBe("mine");
    await page.getByRole("radio", { name: "Title, the book says: theirs" }).check();
    await put.click();
    await eventually(() => page.locator(".merge").count()).toBe(0);
    await save(page, "Save the correction");
    await page.locator(".bench-saved").waitFor();
    const { data } = await ask<Stored>(`/tests/${test.id}`);
    expect(data).toEqual({ ...theirs, note: "noted here" });
  });
});

describe("Bench, a CSV file", () => {
  // openCeFaDB (M. Probst), CC-BY-4.0; RespiraWorks ventilator project, Apache-2.0: see tests/fixtures
  it.each([
    ["fan-three-speeds/600rpm.csv", 43, 1],
    ["fan-three-speeds/800-1000rpm.csv", 47, 2],
    ["small-blower/binned.csv", 40, 3],
  ] as const)("%s becomes %s points, saved one test a speed", async (path, points, speeds) => {
    const rotor = await newRotor(`import of ${path.replace(/\W+/g, " ")}`);
    const page = await screens.open(at("/bench/import"));
    await page.getByLabel("A file").setInputFiles(fixture(path));
    await page.getByLabel("Rotor", { exact: true }).selectOption(rotor.id);
    await page.getByLabel("Rotor diameter").fill("70 mm");
    await page.getByLabel("one test a speed").check();
    await eventually(() => page.locator("main h1").textContent()).toMatch(/can be read, none is skipped/);
    await eventually(() => page.locator(".bench-running").textContent()).toMatch(/R²/);
    await page.getByRole("button", { name: `Save ${points} points as ${speeds} curve test` }).click();
    await confirmIfAsked(page);
    await page.locator(".bench-saved").waitFor();
    const { items } = await ask<{ items: Stored[] }>(`/tests?rotor=${rotor.id}`);
    expect(items.map(({ data }) => data.rows.length).reduce((sum, n) => sum + n, 0)).toBe(points);
    expect(items).toHaveLength(speeds);
  });

  it("with lines that can't be read, pasted with semicolons and decimal commas, skips those and says why", async () => {
    const rotor = await newRotor("import with bad lines");
    const page = await screens.open(at("/bench/import"), { viewport: PHONE });
    await page
      .getByLabel("or pasted text")
      .fill("U;Fluss [L/s];Druck [Pa]\n3,7;0;1250,5\n3,7;x;1100\n3,7;1,5\n3,7;2,5;400");
    await eventually(() => page.locator("main h1").textContent()).toBe("Choose the column with the flow.");
    await page.getByLabel("What Fluss [L/s] is").selectOption("flow");
    await page.getByLabel("One speed for all points").fill("24000");
    await eventually(() => page.locator("main h1").textContent()).toBe(
      "Two lines can be read, two lines are skipped.",
    );
    await eventually(() => page.locator(".bench-bad").allTextContents()).toEqual([
      expect.stringMatching(/^3.*skipped: flow "x" is no number/),
      expect.stringMatching(/^4.*skipped: 2 cells, the header has 3/),
    ]);
    expect(await fits(page)).toBe(true);
    await page.getByLabel("Rotor", { exact: true }).selectOption(rotor.id);
    await page.getByLabel("Rotor diameter").fill("70 mm");
    await page.getByLabel("Save the rest without the 2 skipped lines").check();
    await page.getByRole("button", { name: "Save 2 points as 1 curve test" }).click();
    await page.locator(".bench-saved").waitFor();
    const { items } = await ask<{ items: Stored[] }>(`/tests?rotor=${rotor.id}`);
    expect(items[0].data.rows).toEqual([
      {
        speed: { value: 24000, unit: "rpm" },
        pressure: { value: 1250.5, unit: "Pa" },
        flow: { value: 0, unit: "L/s" },
        voltage: { value: 3.7, unit: "V" },
      },
      {
        speed: { value: 24000, unit: "rpm" },
        pressure: { value: 400, unit: "Pa" },
        flow: { value: 2.5, unit: "L/s" },
        voltage: { value: 3.7, unit: "V" },
      },
    ]);
  });

  it("with a meter's preamble above it: is read from its header on, which can be said to stand elsewhere", async () => {
    const page = await screens.open(at("/bench/import?kind=discharge"), { viewport: PHONE });
    const text = "Bench logger 3\nSerial,20417\nt;U;I\ns;V;A\n0;4,1;0\n10;3,9;2,6\n20;3,88;2,6\n";
    await page.getByLabel("or pasted text").fill(text);
    await eventually(() => page.locator("main h1").textContent()).toBe(
      "Three lines can be read, none is skipped.",
    );
    const header = page.getByLabel("The line with the columns' names");
    expect(await header.inputValue()).toBe("3");
    await eventually(() => page.getByText("2 lines above it not read").count()).toBe(1);
    expect(await fits(page)).toBe(true);
    await header.selectOption("0");
    await eventually(() => page.getByLabel("What column 1 is").count()).toBe(1);
  });

  it("of many runs, with readings that failed: says what those have in common and cures it, and becomes a test a run", async () => {
    const page = await screens.open(at("/bench/import?kind=thrust"));
    await page.getByLabel("A file").setInputFiles(fixture("motor-prop-two-voltages/rows.csv"));
    const headline = () => page.locator("main h1").textContent();
    // counted in the file: 1232 rows, 71 of them with a speed of 0
    await eventually(headline).toBe("1161 lines can be read, 71 lines are skipped.");
    await page.getByText("In 71 lines speed must be more than 0").waitFor();
    await page.getByRole("button", { name: "Read only lines where “rpm” is above 0" }).click();
    await eventually(headline).toBe("1161 lines can be read, none is skipped; 71 lines are not asked for.");
    await page.getByRole("button", { name: "Only lines where…" }).click();
    await page.getByLabel("Column of condition 2").selectOption({ label: "motor_code" });
    await page.getByLabel("Condition 2", { exact: true }).fill("a");
    await page.getByLabel("One test for each value of").selectOption({ label: "prop_code" });
    await page.getByRole("button", { name: /^Save \d+ readings as 8 thrust tests?$/ }).waitFor();
    await page.getByLabel("Factor on thrust_gf").fill("1/4");
    await eventually(() => page.locator(".bench-preview tbody tr").first().textContent()).toContain(
      "3.793 gf",
    );
  });

  it("of a bleed plate: takes the plate of an earlier test, chosen from those that are known", async () => {
    const page = await screens.open(at("/bench/import?kind=curve"), { viewport: PHONE });
    await page
      .getByLabel("or pasted text")
      .fill("rpm,pressure [Pa],open 1,open 2\n24000,1250,0,0\n24000,1100,4,0");
    await eventually(() => page.locator("main h1").textContent()).toBe("Give the bleed plate's holes below.");
    const known = page.getByLabel("A plate of the book, or of an earlier test");
    await known.selectOption({ index: 1 });
    await eventually(() => page.locator("main h1").textContent()).toBe(
      "Two lines can be read, none is skipped.",
    );
    expect(await fits(page)).toBe(true);
  });

  it("with nothing in it, or a header alone, is refused in words", async () => {
    const page = await screens.open(at("/bench/import"));
    const give = (text: string) =>
      page
        .getByLabel("A file")
        .setInputFiles({ name: "a.csv", mimeType: "text/csv", buffer: Buffer.from(text) });
    await give("");
    await eventually(() => page.locator(".bench-source .field-error").textContent()).toMatch(/nothing in it/);
    await give("n,Q,p\r\n");
    await eventually(() => page.locator(".bench-source .field-error").textContent()).toMatch(/only a header/);
  });

  it("that makes a body over 1 MB is not sent, and says so", async () => {
    const rotor = await newRotor("import of much");
    const page = await screens.open(at("/bench/import"));
    const sent: string[] = [];
    page.on("request", (request) => request.method() === "POST" && sent.push(request.url()));
    const row =
      "24000.123456789,1.234567891234,1000.123456789,1.191234567,3.712345678,1.212345678,0.0123456789";
    const text = `n_rpm,Q_Ls,p_Pa,rho_kgm3,voltage_V,current_A,torque_Nm\n${`${row}\n`.repeat(4900)}`;
    await page
      .getByLabel("A file")
      .setInputFiles({ name: "much.csv", mimeType: "text/csv", buffer: Buffer.from(text) });
    await page.getByLabel("Rotor", { exact: true }).selectOption(rotor.id);
    await page.getByLabel("Rotor diameter").fill("70 mm");
    await page.getByRole("button", { name: /^Save 4900 points/ }).click();
    await eventually(() => page.locator(".bench-summary").textContent()).toMatch(
      /MB to send, more than the 1 MB/,
    );
    expect(sent).toEqual([]);
  });
});

describe("Bench, a CSV file of any kind of test", () => {
  const give = (page: Page, text: string) =>
    page
      .getByLabel("A file")
      .setInputFiles({ name: "a.csv", mimeType: "text/csv", buffer: Buffer.from(text) });
  const count = async (kind: string) =>
    (await ask<{ items: Stored[] }>(`/tests?kind=${kind}&limit=100`)).items.length;

  it("as it was exported, on a phone: is known for what it is and stored the same again", async () => {
    const { items } = await ask<{ items: Stored[] }>("/tests?kind=discharge");
    const [first] = items;
    const page = await screens.open(at("/bench"), { viewport: PHONE });
    await page.getByRole("link", { name: "Import from CSV" }).click();
    await give(page, exportCsv(benchTest.parse(first.data), { setUp: true }));
    await page.waitForURL(/kind=discharge/);
    await eventually(() => page.locator("main h1").textContent()).toMatch(/can be read, none is skipped/);
    expect(await fits(page)).toBe(true);
    await save(page, /^Save \d+ readings as 1 discharge test/);
    await page.locator(".bench-saved").waitFor();
    const id = new URL(page.url()).searchParams.get("saved");
    expect(id).not.toBe(first.id);
    expect((await ask<Stored>(`/tests/${id}`)).data).toEqual(first.data);
  });

  it("with wrong lines and a reading that the book refuses: says each beside its line and stores nothing until it is mended", async () => {
    const [motor] = (await ask<{ items: Stored[] }>("/motors")).items;
    const before = await count("motor");
    const page = await screens.open(at("/bench/import"), { viewport: PHONE, allowed: REFUSED });
    await page.getByLabel("Kind of test").selectOption("motor");
    const text = (voltage: string) =>
      `voltage (V);I [mA];rpm;no load\n3,7;310;27600;yes\n${voltage};2200;25000;\n3,9;?;25000;\n`;
    await give(page, text("2000"));
    await page.getByLabel("Motor", { exact: true }).selectOption(motor.id);
    const bad = page.locator(".bench-bad");
    await eventually(() => bad.allTextContents()).toEqual([
      expect.stringMatching(/^4skipped: current "\?" is no number/),
    ]);
    await page.getByLabel("Save the rest without the 1 skipped line").check();
    await save(page, "Save 2 runs as 1 motor test");
    await page.locator(".bench-summary").waitFor();
    await eventually(() => bad.allTextContents()).toEqual([
      expect.stringMatching(/^3refused: voltage: /),
      expect.stringMatching(/^4skipped/),
    ]);
    expect(await fits(page)).toBe(true);
    expect(await count("motor")).toBe(before);
    await give(page, text("4,1"));
    await eventually(() => bad.allTextContents()).toEqual([expect.stringMatching(/^4skipped/)]);
    await page.getByLabel("Save the rest without the 1 skipped line").check();
    await save(page, "Save 2 runs as 1 motor test");
    await page.locator(".bench-saved").waitFor();
    const id = new URL(page.url()).searchParams.get("saved");
    expect((await ask<Stored>(`/tests/${id}`)).data.rows).toEqual([
      expect.objectContaining({ voltage: { value: 3.7, unit: "V" }, noLoad: true }),
      expect.objectContaining({ current: { value: 2200, unit: "mA" }, noLoad: false }),
    ]);
    expect(await count("motor")).toBe(before + 1);
  });
});

describe("Bench, the list", () => {
  it("is narrowed by kind and part, paged by more, and a test is deleted after a question", async () => {
    const page = await screens.open(at("/bench"));
    const rows = page.locator(".bench-test");
    await rows.first().waitFor();
    await eventually(() => rows.count()).toBe(25);
    await page.getByRole("button", { name: "More" }).click();
    await page.waitForFunction(() => document.querySelectorAll(".bench-test").length > 25);
    await page.getByLabel("Kind").selectOption("leak");
    await page.waitForURL(/kind=leak/);
    await page.waitForFunction(() => document.querySelectorAll(".bench-test").length < 10);
    await rows.first().waitFor();
    for (const text of await rows.allTextContents()) expect(text).toMatch(/leak test/);
    const before = await rows.count();
    await rows
      .first()
      .getByRole("button", { name: /^Delete/ })
      .click();
    await page.getByRole("button", { name: "Keep it" }).click();
    await page.getByRole("button", { name: "Keep it" }).waitFor({ state: "detached" });
    expect(await rows.count()).toBe(before);
    await rows
      .first()
      .getByRole("button", { name: /^Delete/ })
      .click();
    await page.getByRole("button", { name: "Delete it" }).click();
    await page.waitForFunction((n) => document.querySelectorAll(".bench-test").length === n, before - 1);
  });

  it("of an empty book has one button for each kind", async () => {
    const page = await screens.open(at("/bench"));
    await page.getByRole("button", { name: "Start an empty bench" }).click();
    await page.getByRole("button", { name: "Yes, start empty" }).click();
    await page.waitForFunction(() => !document.body.textContent?.includes("Demo numbers, invented"));
    await page.goto(at("/bench"));
    await page.getByRole("heading", { name: "No test is logged yet." }).waitFor();
    for (const name of ["Pull test", "Curve test", "Leak test", "Motor test", "Friction test"])
      await eventually(() => page.getByRole("link", { name, exact: true }).count()).toBe(1);
  });
});
