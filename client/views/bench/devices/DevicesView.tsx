import { useState } from "preact/hooks";
import type { Device, DeviceList } from "../../../../shared/model/api/devices.ts";
import { href } from "../../../app/router.ts";
import { Answer } from "../../../ui/Answer.tsx";
import { BusyButton } from "../../../ui/BusyButton.tsx";
import { inWords } from "../../../ui/count.ts";
import { DocLink } from "../../../ui/Docs.tsx";
import { moment } from "../../../ui/moment.ts";
import { Problem } from "../../../ui/Problem.tsx";
import { Status } from "../../../ui/Status.tsx";
import { PairingCodePanel } from "./PairingCodePanel.tsx";
import { useDevices } from "./useDevices.ts";

/** @returns how many devices may ask, as a sentence */
export function devicesInWords(count: number): string {
  const [first, ...rest] = inWords(count);
  return `${first.toUpperCase()}${rest.join("")} ${count <= 1 ? "device is" : "devices are"} paired.`;
}

/** Phones and other computers that use this bench over the local network: paired here, revoked here. */
export default function DevicesView() {
  const { list, shown, said, problem, busy, newCode, revoke } = useDevices();
  return (
    <div class="bench-devices">
      <Answer sentence={list ? devicesInWords(list.items.length) : "Devices"}>
        A phone beside the rotor, a second laptop: each is paired once.{" "}
        <DocLink path="phone.md">How that is done</DocLink> · <a href={href("bench")}>Back to the list</a>
      </Answer>
      {problem && <Problem message={problem} />}
      {said && <Status class="bench-saved">{said}</Status>}
      {list?.network === null && <NotServed />}
      {list?.network && (
        <PairingCodePanel network={list.network} shown={shown} busy={busy} onNew={() => void newCode()} />
      )}
      {list && list.items.length > 0 && <Paired list={list} busy={busy} onRevoke={revoke} />}
    </div>
  );
}

function NotServed() {
  return (
    <p>
      Only this machine is served. To pair a device, end Gripcurve and start it with{" "}
      <code>npm start -- --lan</code>.
    </p>
  );
}

interface PairedProps {
  readonly list: DeviceList;
  readonly busy: boolean;
  readonly onRevoke: (id: string, name: string) => Promise<void>;
}

function Paired({ list, busy, onRevoke }: PairedProps) {
  const [asked, setAsked] = useState<string | null>(null);
  return (
    <section>
      <h2>Paired</h2>
      <ul class="bench-tests bench-copies">
        {list.items.map((device) => (
          <li class="bench-test" key={device.id}>
            <span class="bench-device">{device.name}</span>
            <div>
              <p class="quiet">
                paired <time dateTime={device.pairedAt}>{moment(device.pairedAt)}</time>, last seen{" "}
                <time dateTime={device.seenAt}>{moment(device.seenAt)}</time>
              </p>
              {asked === device.id && (
                <Revoke device={device} busy={busy} onRevoke={onRevoke} onKeep={() => setAsked(null)} />
              )}
            </div>
            {asked !== device.id && (
              <button
                type="button"
                class="plain"
                aria-label={`Revoke ${device.name}`}
                onClick={() => setAsked(device.id)}
              >
                revoke
              </button>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}

interface RevokeProps extends Omit<PairedProps, "list"> {
  readonly device: Device;
  readonly onKeep: () => void;
}

function Revoke({ device, busy, onRevoke, onKeep }: RevokeProps) {
  return (
    <div class="bench-confirm">
      <p>Once revoked it can&apos;t open the bench book any more. What it saved stays in the book.</p>
      <p class="bench-buttons">
        <BusyButton type="button" data-next busy={busy} onClick={() => void onRevoke(device.id, device.name)}>
          Revoke {device.name}
        </BusyButton>
        <button type="button" onClick={onKeep}>
          Keep it
        </button>
      </p>
    </div>
  );
}
