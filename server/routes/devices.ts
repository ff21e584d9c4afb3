import type { Request } from "express";
import type { z } from "zod";
import { device, deviceList, pairing, pairingCode } from "../../shared/model/api/devices.ts";
import { addressesOf } from "../lan/lan.ts";
import { CODE_LIVES, Pairing } from "../lan/pairing.ts";
import { isOverNetwork } from "../middleware/pairedOnly.ts";
import { Refusal } from "../refusal.ts";
import { type Route, route } from "./route.ts";
import type { Service } from "./service.ts";

const NOT_SERVED =
  "The local network is not served: this Gripcurve was started without --lan. Start it with npm start -- --lan.";
const NO_NEED = "This machine needs no pairing; a device is paired over the local network.";
const WRONG =
  "This code is not good, or not any more: each is good for ten minutes and one device. Make a new one at Bench, Devices on the machine that Gripcurve runs on.";

/** What may be kept nowhere on the way. */
const SECRET = { "Cache-Control": "no-store" } as const;

const minutes = (seconds: number): string => {
  const whole = Math.ceil(seconds / 60);
  return whole === 1 ? "a minute" : `${whole} minutes`;
};

/** @throws {Refusal} unless the code is right */
function requireRight(codes: Pairing, code: string, request: Request): void {
  const attempt = codes.attempt(code, request.socket.remoteAddress ?? "");
  if (attempt.is === "too-many") {
    const message = `Too many wrong codes came. Wait ${minutes(attempt.wait)}, then try again with a new one.`;
    throw new Refusal(429, "too-many-codes", message, [], { "Retry-After": String(attempt.wait) });
  }
  if (attempt.is === "wrong") throw new Refusal(403, "wrong-code", WRONG);
}

/** Takes a right code from a device and gives it the secret that it shows from then on. */
function pairRoute({ visitors }: Service, codes: Pairing): Route {
  return {
    method: "post",
    path: "/pairing",
    tag: "devices",
    summary: "Pair the device that asks, by a code that this machine's screen shows",
    body: pairing,
    responses: {
      201: {
        description: "paired",
        schema: device,
        headers: { "Set-Cookie": "the secret that the device shows from now on" },
      },
    },
    refusals: [409, 429, 503, 507],
    serve: async (request, response) => {
      if (!isOverNetwork(request)) throw new Refusal(409, "not-over-network", NO_NEED);
      const { code, name } = request.body as z.output<typeof pairing>;
      requireRight(codes, code, request);
      const { device: paired, cookie } = await visitors.pair(name);
      response
        .status(201)
        .set({ ...SECRET, "Set-Cookie": cookie })
        .json(paired);
    },
  };
}

/** Who may ask over the local network: shown, added and taken away by this machine alone. */
export function deviceRoutes(service: Service): Route[] {
  const { visitors, lan } = service;
  const codes = new Pairing();
  return [
    route({
      method: "get",
      path: "/devices",
      tag: "devices",
      summary: "List the paired devices, and how the bench is reached over the local network",
      thisMachineOnly: true,
      responses: { 200: { description: "the devices", schema: deviceList } },
      refusals: [503],
      answer: () => {
        const network = lan && { addresses: addressesOf(lan), fingerprint: lan.fingerprint };
        return { status: 200, body: { items: visitors.list(), network } };
      },
    }),
    route({
      method: "delete",
      path: "/devices/:id",
      tag: "devices",
      summary: "Revoke a device: it is a stranger from then on",
      thisMachineOnly: true,
      responses: { 204: { description: "revoked" } },
      refusals: [404, 503, 507],
      answer: async ({ id }) => {
        if (await visitors.revoke(id)) return { status: 204 };
        throw new Refusal(404, "not-found", `There is no device ${JSON.stringify(id)}.`);
      },
    }),
    route({
      method: "post",
      path: "/pairing/code",
      tag: "devices",
      summary: "Make a code that pairs one device",
      thisMachineOnly: true,
      responses: { 201: { description: "the code", schema: pairingCode } },
      refusals: [409],
      answer: () => {
        if (!lan) throw new Refusal(409, "no-lan", NOT_SERVED);
        const body = { code: codes.newCode(), seconds: CODE_LIVES / 1000 };
        return { status: 201, body, headers: SECRET };
      },
    }),
    pairRoute(service, codes),
  ];
}
