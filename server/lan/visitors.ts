import { randomBytes } from "node:crypto";
import type { Request, Response } from "express";
import type { Device } from "../../shared/model/api/devices.ts";
import type { Devices } from "../store/devices.ts";
import { patiently } from "../store/patience.ts";
import { hashOf } from "./pairing.ts";

/** Only pages of this very host can have set a cookie of such a name (RFC 6265bis, 4.1.3.2). */
const COOKIE = "__Host-gripcurve";
/** 256 bits. */
const SECRET_BYTES = 32;
/** As long as browsers keep a cookie [s]. */
const KEPT = 400 * 86_400;

function secretOf(request: Request): string | null {
  const cookies = (request.get("cookie") ?? "").split(";").map((each) => each.trim());
  const own = cookies.find((each) => each.startsWith(`${COOKIE}=`));
  return own === undefined ? null : own.slice(COOKIE.length + 1);
}

/** Paired devices, by the secret that each shows, and what is being answered to them. */
export class Visitors {
  readonly #answering = new Map<string, Set<Response>>();

  constructor(
    private readonly devices: Devices,
    private readonly clock: () => Date,
  ) {}

  list(): Device[] {
    return this.devices.list();
  }

  /** @returns the device, and what makes its browser show the secret from now on */
  async pair(name: string): Promise<{ readonly device: Device; readonly cookie: string }> {
    const secret = randomBytes(SECRET_BYTES).toString("base64url");
    const device = await patiently(() => this.devices.add(name, hashOf(secret), this.clock()));
    const cookie = `${COOKIE}=${secret}; Path=/; Max-Age=${KEPT}; Secure; HttpOnly; SameSite=Strict`;
    return { device, cookie };
  }

  /** @returns whether a paired device asks; its answer is broken off when it is revoked meanwhile */
  async admit(request: Request, response: Response): Promise<boolean> {
    const secret = secretOf(request);
    if (secret === null) return false;
    const device = await patiently(
      () => this.devices.seen(hashOf(secret), this.clock()),
      () => response.closed,
    );
    if (!device) return false;
    if (!response.closed) this.#follow(device.id, response);
    return true;
  }

  /** From now on the device is a stranger, and what it is being told ends. @returns false where there is no such device */
  async revoke(id: string): Promise<boolean> {
    const was = await patiently(() => this.devices.revoke(id));
    for (const response of this.#answering.get(id) ?? []) response.destroy();
    return was;
  }

  #follow(id: string, response: Response): void {
    const open = this.#answering.get(id) ?? new Set();
    this.#answering.set(id, open.add(response));
    response.once("close", () => {
      open.delete(response);
      if (open.size === 0 && this.#answering.get(id) === open) this.#answering.delete(id);
    });
  }
}
