import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { rotorSound } from "#tests/support/rotorSound.ts";
import { eventually } from "./support/eventually.ts";
import { PHONE, useScreens } from "./support/page.ts";
import { wavOf } from "./support/wav.ts";

const folder = mkdtempSync(join(tmpdir(), "gripcurve-ear-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const RATE = 48_000;
const RPM = 18_450;
const sound = rotorSound({
  rate: RATE,
  seconds: 4,
  blades: 9,
  turns: () => RPM / 60,
  harmonics: [1, 0.6, 0.4, 0.2],
  noise: -6,
});
const file = join(folder, "rotor.wav");
writeFileSync(file, wavOf(sound, RATE));

const screens = useScreens({
  launch: {
    args: [
      "--no-sandbox",
      "--disable-gpu",
      "--use-fake-device-for-media-stream",
      "--use-fake-ui-for-media-stream",
      `--use-file-for-fake-audio-capture=${file}`,
    ],
  },
});

const rpmIn = (text: string | null) => Number(/([\d.]+) rpm/.exec(text ?? "")?.[1]);

describe("Speed by ear, on a phone beside the rotor", () => {
  it("hears the microphone and a recording to 0.2 %, draws the spectrum, fills a row by one tap, sends nothing", async () => {
    const page = await screens.open("/bench/new/motor", { viewport: PHONE, permissions: ["microphone"] });
    const sent: string[] = [];
    page.on("request", (request) => request.method() !== "GET" && sent.push(request.url()));
    await page.getByText("Speed by ear").click();
    await page.getByLabel("Blades").fill("9");
    await page.getByRole("button", { name: "Listen" }).click();
    const take = page.getByRole("button", { name: /^Take / });
    await take.waitFor();
    // the fake microphone begins its file anew at its end: a speed heard over that seam may be off
    await eventually(async () => Math.abs(rpmIn(await take.textContent()) / RPM - 1) < 2e-3).toBe(true);
    await page.getByRole("button", { name: "Stop listening" }).click();
    expect(await page.locator(".ear .chart-level").count()).toBeGreaterThan(1);
    await page.getByLabel("or a recording").setInputFiles(file);
    await page.getByText("Listening…").waitFor({ state: "detached" });
    await eventually(async () => Math.abs(rpmIn(await take.textContent()) / RPM - 1) < 2e-3).toBe(true);
    const heard = rpmIn(await take.textContent());
    await take.click();
    await eventually(() => page.getByLabel("run 1, speed").inputValue()).toBe(`${heard} rpm`);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(PHONE.width);
    expect(sent).toEqual([]);
  });

  it("says so where the microphone is refused, and takes a recording instead", async () => {
    const page = await screens.open("/bench/new/motor");
    await page.evaluate(() => {
      navigator.mediaDevices.getUserMedia = () => Promise.reject(new DOMException("no", "NotAllowedError"));
    });
    await page.getByText("Speed by ear").click();
    await page.getByLabel("Blades").fill("9");
    await page.getByRole("button", { name: "Listen" }).click();
    await page.getByText("was not allowed to use the microphone").waitFor();
    await page
      .getByLabel("or a recording")
      .setInputFiles({ name: "notes.wav", mimeType: "audio/wav", buffer: Buffer.from("no sound at all") });
    await page.getByText("notes.wav is no recording that this browser can read").waitFor();
  });
});

describe("Tilt by phone, on the tilt board", () => {
  it("is zeroed on the level board, and fills held and slid by one button each", async () => {
    const page = await screens.open("/bench/new/friction", { viewport: PHONE });
    const lay = (degrees: number) =>
      page.evaluate(
        (angle) => {
          const [y, z] = [Math.sin(angle), Math.cos(angle)].map((each) => 9.81 * each);
          const event = () =>
            window.dispatchEvent(
              new DeviceMotionEvent("devicemotion", { accelerationIncludingGravity: { x: 0, y, z } }),
            );
          for (let i = 0; i < 40; i++) event();
        },
        (degrees * Math.PI) / 180,
      );
    await page.getByText("Tilt by phone").click();
    await page.getByRole("button", { name: "Read this phone's tilt" }).click();
    await page.getByText("Waiting for the sensor").waitFor();
    // the phone lies askew on the level board
    await lay(4);
    await page.getByRole("button", { name: "Zero on the level board" }).click();
    await lay(34);
    await page.getByRole("button", { name: "Held at 30.0°" }).click();
    await lay(36.5);
    await page.getByRole("button", { name: "Slid at 32.5°" }).click();
    await eventually(() => page.getByLabel("slide 1, held").inputValue()).toBe("30.0 °");
    expect(await page.getByLabel("slide 1, slid").inputValue()).toBe("32.5 °");
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(PHONE.width);
  });

  it("says so where no sensor answers", async () => {
    const page = await screens.open("/bench/new/friction");
    await page.getByText("Tilt by phone").click();
    await page.getByRole("button", { name: "Read this phone's tilt" }).click();
    await page.getByText("No sensor answers").waitFor();
  });
});
