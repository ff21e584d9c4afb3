import fc from "fast-check";

/** How long one property may take, the search for a smaller counterexample included; without it that search can run for hours [ms]. */
const TIME_LIMIT = 90_000;

/** Every run draws the same cases, so that a red run is red again; a property's own seed goes before it. */
fc.configureGlobal({ seed: 4310, interruptAfterTimeLimit: TIME_LIMIT, markInterruptAsFailure: true });
