import { useState } from "preact/hooks";
import type { Device } from "../../shared/model/api/devices.ts";
import { ApiError, api } from "../state/api.ts";
import { Answer } from "../ui/Answer.tsx";
import { BusyButton } from "../ui/BusyButton.tsx";
import { TextField } from "../ui/Field.tsx";
import { Problem } from "../ui/Problem.tsx";

interface PairPageProps {
  /** from the address that the QR code holds; empty where there is none */
  readonly code: string;
  /** what the device may be called */
  readonly name: string;
  readonly onPaired: () => void;
}

/** The one page that a device sees before it is paired. */
export function PairPage({ code: read, name: guess, onPaired }: PairPageProps) {
  const [code, setCode] = useState(read);
  const [name, setName] = useState(guess);
  const [busy, setBusy] = useState(false);
  const [problem, setProblem] = useState<string | null>(null);
  const pair = async () => {
    setBusy(true);
    setProblem(null);
    try {
      await api.post<Device>("/pairing", { code, name });
      onPaired();
    } catch (error) {
      if (!(error instanceof ApiError)) throw error;
      setProblem(error.fields.map(({ message }) => message).join(" ") || error.message);
    } finally {
      setBusy(false);
    }
  };
  return (
    <main id="main" class="shell-main pair">
      <Answer sentence="Pair this device with the bench.">
        Once paired, it reads and writes the bench book until it is revoked.
      </Answer>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          if (!busy) void pair();
        }}
      >
        <TextField
          label="Name of this device"
          hint="by which it is found, and revoked, in the list"
          value={name}
          onChange={setName}
        />
        <TextField
          label="Code"
          hint={
            read === ""
              ? "32 digits and letters: on the machine that Gripcurve runs on, at Bench, Devices"
              : "from the QR code"
          }
          value={code}
          onChange={setCode}
        />
        {problem && <Problem message={problem} />}
        <BusyButton type="submit" class="primary" busy={busy}>
          Pair this device
        </BusyButton>
      </form>
      <p class="quiet small">
        Did the browser warn of this page? It can&apos;t know the certificate, which this bench made itself.
        Go on only where the certificate&apos;s SHA-256 fingerprint is the one beside the code.
      </p>
    </main>
  );
}
