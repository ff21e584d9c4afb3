export { version } from "../../package.json" with { type: "json" };
