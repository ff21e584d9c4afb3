import { useEffect, useState } from "preact/hooks";
import type { DeviceList, PairingCode } from "../../../../shared/model/api/devices.ts";
import { ApiError, api } from "../../../state/api.ts";

/** How often is looked whether a device has used the code [ms]. */
const LOOK = 2_000;

/** A code on the screen. */
export interface ShownCode {
  readonly code: string;
  /** when it is good no more, by this page's clock [ms] */
  readonly until: number;
  /** devices that were there before it */
  readonly before: readonly string[];
}

/** The paired devices, and a code while one is shown: it goes when its time is over or a device has used it. */
export function useDevices() {
  const [list, setList] = useState<DeviceList | null>(null);
  const [shown, setShown] = useState<ShownCode | null>(null);
  const [said, setSaid] = useState<string | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const [busy, setBusy] = useState(false);
  const attempt = async (act: () => Promise<void>) => {
    try {
      await act();
      setProblem(null);
    } catch (error) {
      if (!(error instanceof ApiError)) throw error;
      setProblem(error.message);
    }
  };
  const work = async (act: () => Promise<void>) => {
    setBusy(true);
    await attempt(act);
    setBusy(false);
  };
  const read = () => attempt(async () => setList(await api.get<DeviceList>("/devices")));
  const newCode = () =>
    work(async () => {
      const { code, seconds } = await api.post<PairingCode>("/pairing/code", {});
      setSaid(null);
      const before = list?.items.map(({ id }) => id) ?? [];
      setShown({ code, until: Date.now() + seconds * 1000, before });
    });
  const revoke = (id: string, name: string) =>
    work(async () => {
      await api.remove(`/devices/${encodeURIComponent(id)}`);
      setList(await api.get<DeviceList>("/devices"));
      setSaid(`${name} is revoked: it can't open the bench book any more.`);
    });
  useEffect(() => void read(), []);
  useEffect(() => {
    if (!shown) return undefined;
    const looking = setInterval(() => {
      if (Date.now() < shown.until) return void read();
      setShown(null);
      setSaid("The code is good no more: its ten minutes are over.");
      return undefined;
    }, LOOK);
    return () => clearInterval(looking);
  }, [shown]);
  useEffect(() => {
    const paired = shown && list?.items.find(({ id }) => !shown.before.includes(id));
    if (!paired) return;
    setShown(null);
    setSaid(`Paired: ${paired.name}.`);
  }, [list, shown]);
  return { list, shown, said, problem, busy, newCode, revoke };
}
