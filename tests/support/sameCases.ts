import fc from "fast-check";

/** Every run draws the same cases, so that a red run is red again; a property's own seed goes before it. */
fc.configureGlobal({ seed: 4310 });
