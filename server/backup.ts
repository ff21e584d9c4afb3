import { backupCommand } from "./backupCommand.ts";
import { configFrom } from "./config.ts";

process.exitCode = backupCommand(process.argv.slice(2), {
  config: () => configFrom(process.env),
  clock: () => new Date(),
  out: (text) => process.stdout.write(text),
  complain: (text) => process.stderr.write(text),
});
