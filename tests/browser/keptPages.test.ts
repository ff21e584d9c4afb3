import { createHash, X509Certificate } from "node:crypto";
import { once } from "node:events";
import { createServer, request, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import { connect } from "node:tls";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { ARGUMENTS } from "./support/browser.ts";
import { eventually } from "./support/eventually.ts";
import { useOwnServer } from "./support/ownServer.ts";
import { useScreens } from "./support/page.ts";

const GONE = /Failed to load resource|ERR_CONNECTION|ERR_INCOMPLETE|ERR_EMPTY|ERR_INTERNET|ERR_FAILED/;
const KEEPS = { serviceWorkers: "allow", allowed: GONE } as const;

const server = useOwnServer({ servesLan: true });
const host = useScreens({ server });

const keptBuilds = (page: Page) => page.evaluate(() => caches.keys());

async function keeps(page: Page): Promise<void> {
  await page.evaluate(async () => {
    await navigator.serviceWorker.ready;
  });
}

/** The key of the certificate that answers, as Chromium's list of trusted ones names it (SHA-256 of its SubjectPublicKeyInfo). */
async function keyOf(address: string): Promise<string> {
  const { hostname, port } = new URL(address);
  const socket = connect({ host: hostname, port: Number(port), rejectUnauthorized: false });
  await once(socket, "secureConnect");
  const { raw } = socket.getPeerCertificate();
  socket.destroy();
  const key = new X509Certificate(raw).publicKey.export({ type: "spki", format: "der" });
  return createHash("sha256").update(key).digest("base64");
}

describe("a device of the local network whose browser trusts the certificate", () => {
  const args: string[] = [...ARGUMENTS];
  // Known once the server runs, before the browser starts.
  beforeAll(async () => {
    args.push(`--ignore-certificate-errors-spki-list=${await keyOf(server.lanAddress ?? "")}`);
  });
  const device = useScreens({
    launch: { args },
    server: {
      get address() {
        return server.lanAddress ?? "";
      },
    },
  });

  it("keeps the pages over TLS, and opens them with the book where no server answers", async () => {
    const screen = await host.open("/bench/devices");
    await screen.getByRole("button", { name: "Make a code" }).click();
    const code = ((await screen.locator(".bench-code").first().textContent()) ?? "").trim();
    const page = await device.open("/match", { ...KEEPS, allowed: /403 \(Forbidden\)|Failed to load|ERR_/ });
    await page.getByLabel("Name of this device").fill("Tablet at the rig");
    await page.getByLabel("Code").fill(code);
    await page.getByRole("button", { name: "Pair this device" }).click();
    await page.getByText(/\d+ tests are in the book/).waitFor();
    await keeps(page);
    // a moment until the book is kept
    await page.waitForTimeout(2500);
    await server.without(async () => {
      const again = await page.context().newPage();
      await again.goto("/bench/new/pull");
      await eventually(() => again.locator("footer").textContent()).toMatch(
        /the book is shown as this device read it on/,
      );
      expect(await again.getByLabel("Skirt").locator("option").count()).toBeGreaterThan(2);
    });
  });
});

/** Stands in front of the server, and serves its client as another build would be. */
class Front {
  /** what every page and the service worker's cache are marked with; null serves the build as it is */
  mark: string | null = null;
  isGone = false;
  readonly #server: Server = createServer((asked, answer) => {
    if (this.isGone) return void asked.destroy();
    const target = new URL(asked.url ?? "/", server.address);
    const headers = { ...asked.headers, host: target.host, "accept-encoding": "identity" };
    // What the browser has is of the other build.
    if (this.mark !== null)
      for (const name of ["if-none-match", "if-modified-since"] as const) delete headers[name];
    const { method } = asked;
    const forwarded = request(target, { method, headers }, async (come) => {
      const type = String(come.headers["content-type"] ?? "");
      const isMarked = /html/.test(type) || target.pathname === "/service-worker.js";
      if (!isMarked || this.mark === null) {
        answer.writeHead(come.statusCode ?? 500, come.headers);
        return void come.pipe(answer);
      }
      const text = Buffer.concat(await come.toArray()).toString();
      const { "content-length": _, etag: __, "last-modified": ___, ...rest } = come.headers;
      answer.writeHead(come.statusCode ?? 500, rest);
      answer.end(this.#marked(text));
      return undefined;
    });
    forwarded.on("error", () => answer.destroy());
    asked.pipe(forwarded);
    return undefined;
  });

  #marked(text: string): string {
    return text
      .replace("</head>", `<meta name="build" content="${this.mark}"></head>`)
      .replace(/gripcurve shell (?=[\w-])/g, `gripcurve shell ${this.mark}-`);
  }

  async listen(): Promise<void> {
    await once(this.#server.listen(0, "127.0.0.1"), "listening");
  }

  close(): void {
    this.#server.close();
    this.#server.closeAllConnections();
  }

  get address(): string {
    return `http://127.0.0.1:${(this.#server.address() as AddressInfo).port}`;
  }
}

describe("an older build that a browser keeps", () => {
  const front = new Front();
  beforeAll(() => front.listen());
  afterAll(() => front.close());
  const screens = useScreens({ server: front });

  it("gives way to the newer one with the first visit after, and the newer opens where no server answers", async () => {
    const page = await screens.open("/bench", KEEPS);
    await keeps(page);
    const [older, ...none] = await keptBuilds(page);
    expect([older, none]).toEqual([expect.stringMatching(/^gripcurve shell /), []]);
    await page.waitForTimeout(2500);

    front.mark = "newer";
    await page.goto("/parts");
    // What the server has is shown at once.
    expect(await page.locator('meta[name="build"]').getAttribute("content")).toBe("newer");
    await eventually(async () => (await keptBuilds(page)).some((name) => name.includes("newer"))).toBe(true);
    await eventually(() =>
      page.evaluate(async () => {
        const { installing, waiting } = (await navigator.serviceWorker.getRegistration()) ?? {};
        return installing ?? waiting ?? null;
      }),
    ).toBeNull();

    front.isGone = true;
    const alone = await page.context().newPage();
    await alone.goto("/bench");
    await alone.locator("main h1").first().waitFor();
    expect(await alone.locator('meta[name="build"]').getAttribute("content")).toBe("newer");
    expect(await keptBuilds(alone)).toHaveLength(2);
    front.isGone = false;
  });
});
