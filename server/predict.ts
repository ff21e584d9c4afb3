import { predictFile, readFile } from "./predictFile.ts";

process.exitCode = predictFile(process.argv.slice(2), {
  read: readFile,
  out: (text) => process.stdout.write(text),
  complain: (text) => process.stderr.write(text),
});
