import { useState } from "preact/hooks";
import type { DeviceList } from "../../../../shared/model/api/devices.ts";
import { BusyButton } from "../../../ui/BusyButton.tsx";
import { SelectField } from "../../../ui/Field.tsx";
import { inGroups, pairingAddress, qrDrawing } from "./qr.ts";
import type { ShownCode } from "./useDevices.ts";

interface PairingCodePanelProps {
  readonly network: NonNullable<DeviceList["network"]>;
  readonly shown: ShownCode | null;
  readonly busy: boolean;
  readonly onNew: () => void;
}

const timeOf = (at: number): string => new Date(at).toLocaleTimeString(undefined, { timeStyle: "short" });

/** Makes a code and shows it: as a QR code, in digits, with the address and the certificate's fingerprint. */
export function PairingCodePanel({ network, shown, busy, onNew }: PairingCodePanelProps) {
  const { addresses } = network;
  const [chosen, setChosen] = useState<string | null>(null);
  const address = addresses.find((each) => each === chosen) ?? addresses[0];
  if (address === undefined)
    return <p>This machine has no address on a network. Connect it to one, then start Gripcurve again.</p>;
  return (
    <section>
      <h2>Pair a device</h2>
      {addresses.length > 1 && (
        <SelectField
          class="bench-address"
          label="Address"
          hint="take another where the device doesn't reach this one"
          value={address}
          options={addresses.map((each) => ({ value: each, label: each.replace("https://", "") }))}
          onChange={setChosen}
        />
      )}
      {shown && <Code shown={shown} address={address} fingerprint={network.fingerprint} />}
      <BusyButton type="button" class={shown ? undefined : "primary"} busy={busy} onClick={onNew}>
        {shown ? "Make another code" : "Make a code"}
      </BusyButton>
    </section>
  );
}

interface CodeProps {
  readonly shown: ShownCode;
  readonly address: string;
  readonly fingerprint: string;
}

function Code({ shown, address, fingerprint }: CodeProps) {
  return (
    <div class="bench-pairing">
      <QrCode text={pairingAddress(address, shown.code)} />
      <dl>
        <dt>On the device, read the QR code with its camera, or open</dt>
        <dd>
          <b>{address}/pair</b>
        </dd>
        <dt>Its code, good until {timeOf(shown.until)} and for one device</dt>
        <dd class="bench-code">{inGroups(shown.code)}</dd>
        <dt>
          The browser there warns that it doesn&apos;t know the certificate: this machine made it. Look at the
          certificate in that warning, and go on where its SHA-256 fingerprint is
        </dt>
        <dd class="bench-code">{fingerprint.replaceAll(":", " ")}</dd>
      </dl>
    </div>
  );
}

/** Dark on light in any theme: readers look for it so. */
function QrCode({ text }: { readonly text: string }) {
  const { path, size } = qrDrawing(text);
  return (
    <svg
      class="bench-qr"
      viewBox={`0 0 ${size} ${size}`}
      role="img"
      aria-label="QR code of the address and the code beside it"
      shape-rendering="crispEdges"
    >
      <rect width={size} height={size} fill="#ffffff" />
      <path d={path} fill="#000000" />
    </svg>
  );
}
