export * from "./draw/place.ts";
export { clippedText, textWidth } from "./draw/type.ts";
