import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { axeFindings, sideways } from "./support/audit.ts";
import { eventually } from "./support/eventually.ts";
import { useOwnServer } from "./support/ownServer.ts";
import { PHONE, useScreens } from "./support/page.ts";

const server = useOwnServer({ servesLan: true });
const laptop = useScreens({ server });
const phone = useScreens({
  server: {
    get address() {
      return server.lanAddress ?? "";
    },
  },
});

/** A phone that goes on past the warning of a certificate that it doesn't know. */
const ON_PHONE = { viewport: PHONE, isMobile: true, hasTouch: true, ignoreHTTPSErrors: true } as const;

async function newCode(page: Page): Promise<string> {
  await page.getByRole("button", { name: "Make a code" }).click();
  return ((await page.locator(".bench-code").first().textContent()) ?? "").trim();
}

describe("two screens", () => {
  it("a phone is paired once, both see what the other saves, and a revoked phone sees nothing more", async () => {
    const host = await laptop.open("/bench/devices");
    await eventually(() => host.locator("main h1").textContent()).toBe("No device is paired.");
    const code = await newCode(host);
    expect(code).toMatch(/^([0-9a-f]{4} ){7}[0-9a-f]{4}$/);
    await host.getByText(/^([0-9A-F]{2} ){31}[0-9A-F]{2}$/).waitFor();
    expect(await axeFindings(host)).toEqual([]);

    // What a device is being answered at the moment it is revoked is broken off.
    const allowed = /403 \(Forbidden\)|ERR_INCOMPLETE_CHUNKED_ENCODING/;
    const device = await phone.open("/match", { ...ON_PHONE, allowed });
    expect(new URL(device.url()).pathname).toBe("/pair");
    expect(await axeFindings(device)).toEqual([]);
    expect(await sideways(device)).toEqual([]);
    const pair = device.getByRole("button", { name: "Pair this device" });
    await device.getByLabel("Name of this device").fill("Phone at the rig");
    await device.getByLabel("Code").fill("0000 0000");
    await pair.click();
    await device.getByText("This code is not good").waitFor();
    await device.getByLabel("Code").fill(code);
    await pair.click();
    await device.getByText(/\d+ tests are in the book/).waitFor();
    await host.locator("main").getByText("Paired: Phone at the rig.").waitFor();
    expect(await device.evaluate(() => isSecureContext && "mediaDevices" in navigator)).toBe(true);

    const watching = await laptop.open("/bench");
    const save = () =>
      device.evaluate(async () => {
        const [test] = (await (await fetch("/api/v1/tests?limit=1")).json()).items;
        const body = JSON.stringify({ ...test.data, title: "Seen from the phone" });
        const headers = { "Content-Type": "application/json" };
        await fetch("/api/v1/tests", { method: "POST", headers, body });
      });
    // Saved again until it is seen: the first may come before the page that watches hears of changes.
    await eventually(async () => {
      await save();
      return watching.getByText("Seen from the phone").count();
    }).toBeGreaterThan(0);

    await host.getByRole("button", { name: "Revoke Phone at the rig" }).click();
    await host.getByRole("button", { name: "Revoke Phone at the rig" }).click();
    await host.locator("main").getByText("No device is paired.").waitFor();
    await device.goto("/bench");
    expect(new URL(device.url()).pathname).toBe("/pair");
  });

  it("the address that the QR code holds fills the code in, and shows it nowhere", async () => {
    const host = await laptop.open("/bench/devices", { viewport: PHONE, colorScheme: "dark" });
    const code = (await newCode(host)).replaceAll(" ", "");
    expect(await sideways(host)).toEqual([]);
    expect(await axeFindings(host, "colour")).toEqual([]);
    const device = await phone.open(`/pair#${code}`, ON_PHONE);
    await eventually(() => device.getByLabel("Code").inputValue()).toBe(code);
    expect(device.url()).not.toContain(code);
    await device.getByRole("button", { name: "Pair this device" }).click();
    await device.getByText(/\d+ tests are in the book/).waitFor();
  });
});
