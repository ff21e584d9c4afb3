export * from "./draw/frame.ts";
