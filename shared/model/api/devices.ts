import { z } from "zod";
import { identifier, name } from "../scalar.ts";

/** A phone or another computer that was paired with the bench. */
export const device = z.strictObject({
  id: identifier(),
  name: name(),
  pairedAt: z.iso.datetime(),
  seenAt: z.iso.datetime().describe("when it asked last, to five minutes"),
});

/** How the bench is reached over the local network. */
const network = z.strictObject({
  addresses: z.array(z.string()).describe("of the screens, the likeliest to work first"),
  fingerprint: z.string().describe("SHA-256 of the certificate, as browsers show it"),
});

/** The paired devices, the first that was paired first. */
export const deviceList = z.strictObject({
  items: z.array(device),
  network: network.nullable().describe("null where the server was started without --lan"),
});

/** A code that pairs one device. */
export const pairingCode = z.strictObject({
  code: z.string().describe("32 hexadecimal digits; the one before it is good no more"),
  seconds: z.int().min(0).describe("how long it is good"),
});

/** What a device sends to be paired. */
export const pairing = z.strictObject({
  code: z.string().min(1, "a code is needed").max(100).describe("as it was read or typed"),
  name: name().describe("what the device is called in the list"),
});

export type Device = z.output<typeof device>;
export type DeviceList = z.output<typeof deviceList>;
export type PairingCode = z.output<typeof pairingCode>;
