/** A microphone that is open. */
export interface Microphone {
  /** of its samples [Hz] */
  readonly rate: number;
  /** @returns the last samples that were heard, full scale 1 */
  readonly last: () => Float32Array;
  readonly stop: () => void;
}

/** Samples that are looked at together: 0.7 s at 48 kHz, as many as a browser keeps. */
const KEPT = 32_768;

/** A browser's help to speech would take a rotor out of the sound. */
const AS_IT_IS = { echoCancellation: false, noiseSuppression: false, autoGainControl: false };

const REFUSALS: Readonly<Record<string, string>> = {
  NotAllowedError:
    "The browser was not allowed to use the microphone. Allow it for this page in the browser's settings, or take a recording.",
  NotFoundError: "No microphone was found. Plug one in, or take a recording.",
  NotReadableError: "Another program holds the microphone. Close it, or take a recording.",
};

/** @returns why a microphone can't be used, in words */
function refusalOf(error: unknown): string {
  if (!(error instanceof DOMException)) throw error;
  return REFUSALS[error.name] ?? `The microphone can't be used: ${error.message}. Take a recording.`;
}

/** Opens the microphone; what it hears stays in memory for less than a second, and goes nowhere. */
export async function openMicrophone(): Promise<Microphone | { readonly problem: string }> {
  if (!navigator.mediaDevices)
    return {
      problem:
        "A browser opens the microphone only on this machine's own address, or over https. Take a recording instead.",
    };
  try {
    const stream = await navigator.mediaDevices.getUserMedia({ audio: AS_IT_IS });
    const context = new AudioContext();
    const analyser = context.createAnalyser();
    analyser.fftSize = KEPT;
    context.createMediaStreamSource(stream).connect(analyser);
    return {
      rate: context.sampleRate,
      last: () => {
        const samples = new Float32Array(KEPT);
        analyser.getFloatTimeDomainData(samples);
        return samples;
      },
      stop: () => {
        for (const track of stream.getTracks()) track.stop();
        void context.close();
      },
    };
  } catch (error) {
    return { problem: refusalOf(error) };
  }
}
