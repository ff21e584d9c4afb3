const HEADER = 44;
const FULL = 32_767;

/** @returns samples as a WAV file: one channel, 16 bit (Multimedia Programming Interface and Data Specifications 1.0, 1991) */
export function wavOf(samples: Float32Array, rate: number): Buffer {
  const bytes = Buffer.alloc(HEADER + samples.length * 2);
  bytes.write("RIFF", 0);
  bytes.writeUInt32LE(bytes.length - 8, 4);
  bytes.write("WAVEfmt ", 8);
  bytes.writeUInt32LE(16, 16);
  bytes.writeUInt16LE(1, 20);
  bytes.writeUInt16LE(1, 22);
  bytes.writeUInt32LE(rate, 24);
  bytes.writeUInt32LE(rate * 2, 28);
  bytes.writeUInt16LE(2, 32);
  bytes.writeUInt16LE(16, 34);
  bytes.write("data", 36);
  bytes.writeUInt32LE(samples.length * 2, 40);
  for (const [i, sample] of samples.entries())
    bytes.writeInt16LE(Math.round(FULL * Math.max(-1, Math.min(1, sample))), HEADER + 2 * i);
  return bytes;
}
