import { describe, expect, it } from "vitest";
import { eventually } from "./support/eventually.ts";
import { useOwnServer } from "./support/ownServer.ts";
import { useScreens } from "./support/page.ts";

const screens = useScreens();
const server = useOwnServer();

const rename = async (name: string) => {
  const at = `${server.address}/api/v1/rotors/swept-nine`;
  const { data, revision } = (await (await fetch(at)).json()) as { data: object; revision: number };
  const answer = await fetch(at, {
    method: "PUT",
    headers: { "Content-Type": "application/json", "If-Match": `"${revision}"` },
    body: JSON.stringify({ ...data, name }),
  });
  expect(answer.status).toBe(200);
};

describe("a change while a page opens", () => {
  it("is on the screen, be it written after the book was read and before the stream stood", async () => {
    const page = await screens.open(`${server.address}/parts`);
    let renamed = false;
    await page.route("**/api/v1/rotors?**", async (route) => {
      const answer = await route.fetch();
      if (!renamed) {
        renamed = true;
        await rename("Swept nine, renamed meanwhile");
      }
      await route.fulfill({ response: answer });
    });
    await page.reload();
    await eventually(() => page.locator("main").textContent()).toContain("Swept nine, renamed meanwhile");
  });
});
