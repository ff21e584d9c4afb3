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
    await page.locator("main").getByText("Listening…").waitFor({ state: "detached" });
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

/** The browser may ask its user before it gives the tilt: he has said yes. */
const ALLOWED = { permissions: ["accelerometer", "gyroscope"] };

describe("Tilt by phone, on the tilt board", () => {
  it("is zeroed on the level board, and fills held and slid by one button each", async () => {
    const page = await screens.open("/bench/new/friction", { viewport: PHONE, ...ALLOWED });
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
    await page.locator("main").getByText("Waiting for the sensor").waitFor();
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
    const page = await screens.open("/bench/new/friction", ALLOWED);
    await page.getByText("Tilt by phone").click();
    await page.getByRole("button", { name: "Read this phone's tilt" }).click();
    await page.getByText("No sensor answers").waitFor();
  });
});

/** Stands in for the browser's serial port: what the test says arrives as the instrument's bytes. */
function standInPort(): void {
  const say = { write: (_text: string) => undefined, unplug: () => undefined } as {
    write: (text: string) => void;
    unplug: () => void;
  };
  const port = {
    readable: null as ReadableStream<Uint8Array> | null,
    open: async ({ baudRate }: { baudRate: number }) => {
      if (baudRate !== 9600) throw new DOMException("wrong", "NetworkError");
      port.readable = new ReadableStream<Uint8Array>({
        start(stream) {
          say.write = (text) => stream.enqueue(new TextEncoder().encode(text));
          say.unplug = () => stream.error(new DOMException("The device has been lost.", "NetworkError"));
        },
      });
    },
    close: async () => undefined,
  };
  Object.defineProperty(navigator, "serial", { value: { requestPort: async () => port } });
  Object.assign(window, { instrument: say });
}

describe("By wire, with a serial port stood in for", () => {
  it("shows what an instrument says, takes pulls by themselves, and says when it is lost; nothing is lost with it", async () => {
    const page = await screens.open("/bench/new/pull");
    await page.evaluate(standInPort);
    const write = (text: string) =>
      page.evaluate((said) => {
        (window as unknown as { instrument: { write: (text: string) => void } }).instrument.write(said);
      }, text);
    await page.getByText("By wire").click();
    await page.getByRole("button", { name: "Connect", exact: true }).click();
    await page.getByText("The port can't be opened: wrong").waitFor();
    await page.getByLabel("Speed of the line").selectOption("9600");
    await page.getByRole("button", { name: "Connect", exact: true }).click();
    await page.locator("main").getByText("Waiting for the first line").waitFor();
    await write("scale ready\r\nheld_g=0 U_V=3.9\r\n");
    await page.locator("main").getByText("1 of 2 lines can't be read, the last: “scale ready”").waitFor();
    expect(await page.getByLabel("What held_g is").inputValue()).toBe("held");
    expect(await page.getByLabel("Unit of U_V").inputValue()).toBe("V");
    await page.getByLabel(/take each pull by itself/).check();
    await write("held_g=100 U_V=3.9\nheld_g=250 U_V=3.9\nheld_g=41");
    await write("0 U_V=3.88\nheld_g=20 U_V=3.9\n");
    await eventually(() => page.getByLabel("pull 1, held").inputValue()).toBe("410 g");
    expect(await page.getByLabel("pull 1, let go").inputValue()).toBe("570 g");
    await page.evaluate(() => {
      (window as unknown as { instrument: { unplug: () => void } }).instrument.unplug();
    });
    await page.getByText("The instrument was lost").waitFor();
    expect(await page.getByLabel("pull 1, held").inputValue()).toBe("410 g");
  });

  it("takes a step of a leak test once it stands still, and no second one while nothing changes", async () => {
    const page = await screens.open("/bench/new/leak");
    await page.evaluate(standInPort);
    await page.getByText("By wire").click();
    await page.getByLabel("Speed of the line").selectOption("9600");
    await page.getByRole("button", { name: "Connect", exact: true }).click();
    await page.locator("main").getByText("Waiting for the first line").waitFor();
    await page.evaluate(() => {
      const { instrument } = window as unknown as { instrument: { write: (text: string) => void } };
      setInterval(() => instrument.write('{"p_Pa":420,"note":"x"}\n'), 100);
    });
    await page.getByLabel(/take each step by itself/).check();
    await eventually(() => page.getByLabel("point 1, suction").inputValue()).toBe("420 Pa");
    await page.getByText("steady").waitFor();
    expect(await page.getByLabel("point 2, suction").count()).toBe(0);
    await page.getByRole("button", { name: "Take this reading" }).click();
    await eventually(() => page.getByLabel("point 2, suction").inputValue()).toBe("420 Pa");
  });
});
