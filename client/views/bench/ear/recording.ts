/** A recording as samples of one channel. */
export interface Recording {
  readonly name: string;
  readonly rate: number;
  readonly samples: Float32Array;
}

/** Longer ones say no more, and take long to hear through [s]. */
const LONGEST = 120;
const MEGABYTE = 1e6;
const GREATEST = 64 * MEGABYTE;

/** The mean of all channels. */
function mixed(buffer: AudioBuffer): Float32Array {
  const samples = new Float32Array(buffer.length);
  for (let channel = 0; channel < buffer.numberOfChannels; channel++) {
    const data = buffer.getChannelData(channel);
    for (let i = 0; i < samples.length; i++) samples[i] += data[i] / buffer.numberOfChannels;
  }
  return samples;
}

/** Decodes a recording on this device: WAV, or whatever else the browser can read. */
export async function readRecording(file: File): Promise<Recording | { readonly problem: string }> {
  if (file.size > GREATEST)
    return {
      problem: `${file.name} has ${(file.size / MEGABYTE).toFixed(0)} MB; allowed: at most 64 MB. Cut it shorter.`,
    };
  const context = new AudioContext();
  try {
    const buffer = await context.decodeAudioData(await file.arrayBuffer());
    if (buffer.duration > LONGEST)
      return {
        problem: `${file.name} lasts ${Math.round(buffer.duration)} s; allowed: at most ${LONGEST} s. Cut it shorter.`,
      };
    return { name: file.name, rate: buffer.sampleRate, samples: mixed(buffer) };
  } catch (error) {
    if (!(error instanceof DOMException)) throw error;
    return { problem: `${file.name} is no recording that this browser can read. Save it as WAV.` };
  } finally {
    void context.close();
  }
}
