import { useEffect, useRef, useState } from "preact/hooks";
import { type BladePass, findBladePass, type Heard } from "../../../../shared/fit/sound/bladePass.ts";
import { type CoastDown, fitCoastDown } from "../../../../shared/fit/sound/coastDown.ts";
import { type Spectrum, spectrumOf } from "../../../../shared/fit/sound/spectrum.ts";
import { type Moment, speedOf, steadySpeed, trackOf } from "../../../../shared/fit/sound/track.ts";
import { answerOrNull } from "../../../../shared/numeric/errors.ts";
import type { HeardSpeed } from "./earWords.ts";
import { type Microphone, openMicrophone } from "./microphone.ts";
import { readRecording } from "./recording.ts";

/** Between two looks at what the microphone hears [ms]. */
const BETWEEN = 500;
/** So long the screen may wait while a recording is heard through [ms]. */
const BIT = 12;

/** What was heard last. */
export interface Hearing {
  readonly spectrum: Spectrum;
  /** null where no rotor is heard */
  readonly found: BladePass | null;
  /** null where no speed can be said */
  readonly speed: HeardSpeed | null;
  /** of a recording */
  readonly moments: readonly Moment[];
  readonly coastDown: CoastDown | null;
  /** the recording's name; null for the microphone */
  readonly from: string | null;
}

function heardNow(samples: Float32Array, rate: number, heard: Heard): Hearing {
  const spectrum = spectrumOf(samples, rate);
  const found = findBladePass(spectrum, heard);
  const speed = found && speedOf(found, heard.blades);
  return { spectrum, found, speed, moments: [], coastDown: null, from: null };
}

/** Lets the screen answer between bits of long work. */
async function bitByBit<T>(
  work: Generator<number, T>,
  onPart: (part: number) => void,
  isWanted: () => boolean,
): Promise<T | null> {
  for (;;) {
    const until = performance.now() + BIT;
    do {
      const step = work.next();
      if (step.done) return step.value;
      onPart(step.value);
    } while (performance.now() < until);
    await new Promise((resolve) => setTimeout(resolve));
    if (!isWanted()) return null;
  }
}

/** The window's worth of samples that is loudest: the picture of a recording. */
function loudest(samples: Float32Array): Float32Array {
  const length = Math.min(samples.length, 32_768);
  let [best, at] = [-1, 0];
  for (let from = 0; from + length <= samples.length; from += length / 2) {
    let sum = 0;
    for (let i = from; i < from + length; i += 16) sum += samples[i] ** 2;
    if (sum > best) [best, at] = [sum, from];
  }
  return samples.subarray(at, at + length);
}

/** Listens, to the microphone or to a recording, with what it is to listen for. */
export function useEar(heard: Heard) {
  const [hearing, setHearing] = useState<Hearing | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const [part, setPart] = useState<number | null>(null);
  const [open, setOpen] = useState<Microphone | null>(null);
  const wanted = useRef(heard);
  wanted.current = heard;
  const work = useRef(0);
  useEffect(() => {
    if (!open) return undefined;
    const listen = () => setHearing(heardNow(open.last(), open.rate, wanted.current));
    const timer = setInterval(listen, BETWEEN);
    return () => {
      clearInterval(timer);
      open.stop();
    };
  }, [open]);
  useEffect(
    () => () => {
      work.current++;
    },
    [],
  );
  const start = async () => {
    setProblem(null);
    setHearing(null);
    const microphone = await openMicrophone();
    if ("problem" in microphone) setProblem(microphone.problem);
    else setOpen(microphone);
  };
  const hearRecording = async (file: File) => {
    const mine = ++work.current;
    setOpen(null);
    setProblem(null);
    setHearing(null);
    const recording = await readRecording(file);
    if ("problem" in recording) return setProblem(recording.problem);
    const { samples, rate, name } = recording;
    const part = loudest(samples);
    const first = answerOrNull(() => heardNow(part, rate, heard));
    if (!first) return setProblem(`${name} is too short: record at least a second.`);
    const moments = await bitByBit(trackOf(samples, rate, heard), setPart, () => mine === work.current);
    if (!moments) return undefined;
    setPart(null);
    const speed = steadySpeed(moments);
    const coastDown = answerOrNull(() => fitCoastDown(moments));
    setHearing({ ...first, speed, moments, coastDown, from: name });
    return undefined;
  };
  return { hearing, problem, part, isOpen: open !== null, start, stop: () => setOpen(null), hearRecording };
}
