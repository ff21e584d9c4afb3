import { useEffect, useRef, useState } from "preact/hooks";
import { type Gravity, type Rest, restOf } from "../../../../shared/fit/tilt.ts";

/** Readings that are looked at together: half a second at sixty a second. */
const KEPT = 30;
/** Between two pictures of the tilt [ms]. */
const BETWEEN = 150;
/** A device with a sensor gives a reading within this [ms]. */
const PATIENCE = 2500;

const NO_SENSOR =
  "No sensor answers. A phone gives its tilt only to a page of this machine's own address, or over https; a laptop has no such sensor.";
const REFUSED =
  "The browser was not allowed to read the sensors. Allow motion sensors for this page in its settings.";

/** Safari asks its user first. */
interface AskingSensor {
  readonly requestPermission?: () => Promise<"granted" | "denied">;
}

async function isAllowed(): Promise<boolean> {
  const { requestPermission } = DeviceMotionEvent as AskingSensor;
  if (!requestPermission) return true;
  try {
    return (await requestPermission()) === "granted";
  } catch (error) {
    if (error instanceof DOMException) return false;
    throw error;
  }
}

/** Gravity in the phone's axes, mean of the last half second; null before the first readings. */
export function useGravity() {
  const [rest, setRest] = useState<Rest | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const [isOn, setOn] = useState(false);
  const samples = useRef<Gravity[]>([]);
  useEffect(() => {
    if (!isOn) return undefined;
    const take = ({ accelerationIncludingGravity: now }: DeviceMotionEvent) => {
      if (!now || now.x === null || now.y === null || now.z === null) return;
      samples.current = [...samples.current.slice(1 - KEPT), [now.x, now.y, now.z]];
    };
    const show = () => {
      if (samples.current.length < KEPT / 2) return;
      setProblem(null);
      setRest(restOf(samples.current));
    };
    const late = () => samples.current.length === 0 && setProblem(NO_SENSOR);
    window.addEventListener("devicemotion", take);
    const [timer, waiting] = [setInterval(show, BETWEEN), setTimeout(late, PATIENCE)];
    return () => {
      window.removeEventListener("devicemotion", take);
      clearInterval(timer);
      clearTimeout(waiting);
      samples.current = [];
    };
  }, [isOn]);
  const start = async () => {
    if (typeof DeviceMotionEvent === "undefined") return setProblem(NO_SENSOR);
    if (!(await isAllowed())) return setProblem(REFUSED);
    setProblem(null);
    setOn(true);
    return undefined;
  };
  return { rest, problem, isOn, start };
}
