import type { Page, Request } from "playwright-core";
import { describe, expect, it } from "vitest";
import { lookedThrough } from "./support/audit.ts";
import { eventually } from "./support/eventually.ts";
import { useOwnServer } from "./support/ownServer.ts";
import { useScreens } from "./support/page.ts";

const server = useOwnServer();
const screens = useScreens({ server });

const fill = (page: Page, label: string | RegExp, text: string) => page.getByLabel(label).first().fill(text);
const save = (page: Page) => page.getByRole("button", { name: "Save", exact: true }).click();

async function records(name: string): Promise<{ id: string; data: Record<string, unknown> }[]> {
  const response = await fetch(`${server.address}/api/v1/${name}?limit=500`);
  return ((await response.json()) as { items: { id: string; data: Record<string, unknown> }[] }).items;
}

describe("Parts and builds", () => {
  it("adds a skirt, with its sizes typed in four units, and the book keeps SI", async () => {
    const page = await screens.open("/parts/skirts/new");
    await fill(page, "Name", "Foam lip");
    await fill(page, "Length along the lip", "25 cm");
    await fill(page, "Area inside the lip", "4000 mm²");
    await fill(page, "Width of the lip, along the flow", "0.118 in");
    await fill(page, "Gap as set", "0,6");
    await save(page);
    await page.getByText("saved", { exact: true }).waitFor();
    const kept = (await records("skirts")).find((each) => each.data.name === "Foam lip")?.data;
    expect(kept?.perimeter).toBeCloseToRelative(0.25, 1e-12);
    expect(kept?.area).toBeCloseToRelative(0.004, 1e-12);
    expect(kept?.land).toBeCloseToRelative(0.118 * 0.0254, 1e-12);
    expect(kept?.gap).toBeCloseToRelative(0.0006, 1e-12);
  });

  it("says beside each field what is wrong, with a unit of another quantity and fields left empty, and stores nothing", async () => {
    const page = await screens.open("/parts/skirts/new");
    const before = (await records("skirts")).length;
    await fill(page, "Length along the lip", "25 g");
    await save(page);
    await eventually(() =>
      page.locator(".field", { hasText: "Length along the lip" }).locator(".field-error").textContent(),
    ).toMatch(/Read "25 g".*for example/);
    await eventually(() =>
      page.locator(".field", { hasText: /^Name/ }).locator(".field-error").textContent(),
    ).toBe("Name is needed.");
    expect((await records("skirts")).length).toBe(before);
  });

  it("says beside its field what is allowed, with a value beyond the model's limits, and sends nothing", async () => {
    const page = await screens.open("/parts/skirts/new");
    await fill(page, "Name", "Too wide");
    await fill(page, "Length along the lip", "500 m");
    await fill(page, "Area inside the lip", "40");
    await fill(page, "Width of the lip, along the flow", "3");
    await fill(page, "Gap as set", "0.6");
    await save(page);
    const error = page.locator(".field", { hasText: "Length along the lip" }).locator(".field-error");
    await eventually(() => error.textContent()).toBe(
      'Read "500 m"; allowed: more than 0, at most 20\u202fm, for example "25 cm".',
    );
  });

  it("shows the server's own refusal, of a lip that can't enclose its area, beside both fields", async () => {
    const page = await screens.open("/parts/skirts/new", { allowed: /422/ });
    await fill(page, "Name", "Too short");
    await fill(page, "Length along the lip", "100 mm");
    await fill(page, "Area inside the lip", "40 cm²");
    await fill(page, "Width of the lip, along the flow", "3");
    await fill(page, "Gap as set", "0.6");
    await save(page);
    for (const label of ["Length along the lip", "Area inside the lip"]) {
      const error = page.locator(".field", { hasText: label }).locator(".field-error");
      await eventually(() => error.textContent()).toMatch(/allowed: at (least|most) .* circle/);
    }
  });

  it("takes length and area from a rectangle, then retires the skirt with a reason, offers it no more, and uses it again", async () => {
    const page = await screens.open("/parts/skirts/new");
    await fill(page, "Name", "Rounded lip");
    await fill(page, "Rectangle inside the lip", "110 × 90 mm, r 12");
    await page.getByText("longest straight side 86.0\u202fmm").waitFor();
    expect(await page.getByLabel("Area inside the lip").first().getAttribute("readonly")).not.toBeNull();
    await fill(page, "Width of the lip, along the flow", "3");
    await fill(page, "Gap as set", "0.6");
    await save(page);
    await page.getByText("saved", { exact: true }).waitFor();
    const kept = () => records("skirts").then((all) => all.find(({ data }) => data.name === "Rounded lip"));
    const first = await kept();
    // four straight sides and four quarter circles, by hand
    expect(first?.data.perimeter).toBeCloseToRelative((304 + 24 * Math.PI) * 1e-3, 1e-10);
    await page.getByRole("link", { name: "Rounded lip" }).click();
    await page.getByRole("button", { name: "Retire", exact: true }).click();
    await page.getByLabel("Retired because").fill("cracked");
    await page.getByRole("button", { name: "Retire this skirt" }).click();
    await page.getByText("Retired:").waitFor();
    expect((await kept())?.data).toMatchObject({ retired: "cracked", outline: first?.data.outline });
    await page.getByRole("link", { name: "Parts and builds" }).first().click();
    await page.getByText("1 retired").click();
    await page.getByText("cracked").waitFor();
    await page.getByRole("link", { name: "Rounded lip" }).click();
    await page.getByRole("button", { name: "Use it again" }).click();
    await page.getByRole("button", { name: "Retire", exact: true }).waitFor();
    expect((await kept())?.data.retired).toBeUndefined();
  });

  it("keeps a part that a build uses, with its deletion asked for, and names the build", async () => {
    const [build] = await records("builds");
    const page = await screens.open(`/parts/motors/${String(build.data.motor)}`, { allowed: /409/ });
    await page.getByRole("button", { name: "Delete" }).click();
    await page.getByRole("button", { name: "Yes, delete" }).click();
    await eventually(() => page.locator(".remove-part .field-error").textContent()).toContain(
      String(build.data.name),
    );
  });

  it("corrects a build, with another mass typed, and Match answers with it", async () => {
    const build = (await records("builds")).find((each) => /second rotor/.test(String(each.data.name)));
    const page = await screens.open(`/parts/builds/${build?.id}`);
    await fill(page, "Mass, everything on board", "571 g");
    await save(page);
    await page.getByText("saved", { exact: true }).waitFor();
    await page.goto(`/match/${build?.id}`);
    await eventually(() => page.locator("[data-handle=mass] input[type=text]").inputValue()).toBe("571");
  });
});

describe("A part's form that is left", () => {
  it("keeps what was typed through another view and a reload, until it is cancelled", async () => {
    const page = await screens.open("/parts/motors/new");
    await fill(page, "Name", "Half typed");
    await page.getByRole("textbox", { name: /Speed constant/ }).fill("2300");
    await page.getByRole("link", { name: "Match", exact: true }).click();
    await page.waitForURL(/\/match/);
    await page.goto("/parts/motors/new");
    await eventually(() => page.getByLabel("Name").inputValue()).toBe("Half typed");
    await eventually(() => page.getByRole("textbox", { name: /Speed constant/ }).inputValue()).toMatch(
      /^2300/,
    );
    await eventually(() => page.getByText(/^As you left it today at .*, not saved yet\./).isVisible()).toBe(
      true,
    );
    await page.getByRole("button", { name: "Start over" }).click();
    await eventually(() => page.getByRole("textbox", { name: /Speed constant/ }).inputValue()).toBe("");
  });

  it("open on two screens, saved on one: the other shows both, and saves what is chosen of each", async () => {
    const build = (await records("builds")).find((each) => /second rotor/.test(String(each.data.name)));
    const first = await screens.open(`/parts/builds/${build?.id}`);
    const second = await screens.open(`/parts/builds/${build?.id}`, { allowed: /412/ });
    const before = await first.getByLabel("Mass, everything on board").first().inputValue();
    await fill(first, "Mass, everything on board", "573 g");
    await save(first);
    await first.getByText("saved", { exact: true }).waitFor();
    await fill(second, "Mass, everything on board", "574 g");
    await save(second);
    await second.getByText("changed elsewhere meanwhile").waitFor();
    await second.getByRole("radio", { name: /^Mass, everything on board, you typed: 574/ }).check();
    await second.getByRole("button", { name: "Put the chosen ones into the form" }).click();
    await second.getByText("changed elsewhere meanwhile").waitFor({ state: "detached" });
    expect(await second.getByLabel("Mass, everything on board").first().inputValue()).toBe("574 g");
    await fill(second, "Mass, everything on board", before);
    await save(second);
    await second.getByText("saved", { exact: true }).waitFor();
  });

  it("refused: the first field in question has the focus", async () => {
    const page = await screens.open("/parts/skirts/new");
    await fill(page, "Name", "Lip");
    await save(page);
    const label = page.locator(".field", { has: page.locator("input:focus") }).locator("label");
    await page.locator("input:focus[aria-invalid=true]").waitFor();
    await eventually(() => label.textContent()).toMatch(/Length along the lip/);
  });
});

describe("An empty bench", () => {
  it("is one click and a word away, with the demo loaded, and says in order what fills it; the demo comes back", async () => {
    const page = await screens.open("/parts");
    let letGo = () => {};
    const emptied = new Promise<void>((done) => {
      letGo = done;
    });
    // What is still asked about the demo's build reaches the server when the build is gone.
    await page.route("**/next-tests?*", async (route) => {
      await emptied;
      await route.continue();
    });
    const waiting = new Set<Request>();
    page.on("request", (request) => {
      if (request.url().includes("/next-tests?")) waiting.add(request);
    });
    for (const end of ["requestfinished", "requestfailed"] as const)
      page.on(end as "requestfinished", (request) => waiting.delete(request));
    await page.route("**/bench/empty", async (route) => {
      const response = await route.fetch();
      letGo();
      await route.fulfill({ response });
    });
    await page.getByRole("link", { name: "Match", exact: true }).click();
    await lookedThrough(page);
    await eventually(() => waiting.size).toBe(1);
    // The book is read anew only once that was answered.
    await page.route("**/api/v1/bench", async (route) => {
      await eventually(() => waiting.size).toBe(0);
      await route.continue();
    });
    await page.getByRole("button", { name: "Start an empty bench" }).click();
    await page.getByRole("button", { name: "Yes, start empty" }).click();
    await page.getByText("Nothing to match yet.").waitFor();
    await eventually(() => page.locator(".steps li").count()).toBe(10);
    expect(await records("builds")).toEqual([]);
    await page.goto("/run-down");
    await page.getByRole("heading", { level: 1, name: "No build to run down yet." }).waitFor();
    await page.goto("/bench/new/motor");
    await page.getByRole("link", { name: "add a motor" }).click();
    await page.getByRole("heading", { level: 1, name: "Add a motor" }).waitFor();
    await page.goto("/match");
    await page.getByRole("link", { name: "Add a motor" }).click();
    await page.getByRole("heading", { level: 1, name: "Add a motor" }).waitFor();
    await page.goBack();
    await page.getByRole("button", { name: "invented demo" }).click();
    await page.locator("[data-handle=gap]").waitFor();
    await eventually(() => page.getByText("Demo numbers, invented").isVisible()).toBe(true);
  });
});

describe("Instruments and bleed plates", () => {
  it("are added with a unit of what is measured, and chosen in a curve test", async () => {
    const page = await screens.open("/parts/instruments/new");
    await fill(page, "Name", "Slant tube");
    await page.getByLabel("Measures").selectOption("pressure");
    await fill(page, /^Per cent of the reading/, "1.5");
    await fill(page, /^Fixed part/, "3 rpm");
    await save(page);
    const wrong = page.locator(".field", { hasText: "Fixed part" }).locator(".field-error");
    await eventually(() => wrong.textContent()).toMatch(/Read "3 rpm"/);
    await fill(page, /^Fixed part/, "0.2 mmH2O");
    await save(page);
    await page.getByText("saved", { exact: true }).waitFor();
    const instrument = (await records("instruments")).find(({ data }) => data.name === "Slant tube");
    expect(instrument?.data).toMatchObject({
      measures: "pressure",
      percent: 1.5,
      absolute: { value: 0.2, unit: "mmH2O" },
    });

    await page.goto(`${server.address}/parts/plates/new`);
    await fill(page, "Name", "Thin plate");
    await fill(page, /^Thickness/, "1 mm");
    await fill(page, "How many", "8");
    await fill(page, /^Bore/, "5 mm");
    await save(page);
    await page.getByText("saved", { exact: true }).waitFor();

    await page.goto(`${server.address}/bench/new/curve`);
    await page
      .getByLabel("A plate of the book, or of an earlier test")
      .selectOption({ label: "Thin plate: 8 × 5 mm; 1 mm thick" });
    await page.getByRole("link", { name: "Its holes and its own discharge coefficient" }).waitFor();
    await page.getByText("Instruments", { exact: true }).click();
    await page.getByLabel("Pressure, read by").selectOption({ label: "Slant tube" });
    expect(await page.getByLabel("Pressure, % of reading").count()).toBe(0);
  });
});
