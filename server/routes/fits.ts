import { fitLeak } from "../../shared/bench/leakFit.ts";
import { fitMotor } from "../../shared/bench/motorFit.ts";
import { fitPropeller } from "../../shared/bench/propellerFit.ts";
import { fitPull } from "../../shared/bench/pullFit.ts";
import { fitRotor } from "../../shared/bench/rotorFit.ts";
import {
  leakFitRequest,
  leakFitResponse,
  motorFitRequest,
  motorFitResponse,
  propellerFitRequest,
  propellerFitResponse,
  pullFitRequest,
  pullFitResponse,
  rotorFitRequest,
  rotorFitResponse,
} from "../../shared/model/api/fits.ts";
import { computeRoute } from "./compute.ts";
import type { Route } from "./route.ts";

/** From readings given inline to the constants of a part: the functions that the stored tests go through as well. */
export const fitRoutes = (): Route[] => [
  computeRoute({
    path: "/fit/rotor",
    summary: "Curve of a rotor family from readings of speed, flow and pressure",
    request: rotorFitRequest,
    response: rotorFitResponse,
    compute: fitRotor,
  }),
  computeRoute({
    path: "/fit/motor",
    summary: "Constants of a motor from readings of voltage, current and speed",
    request: motorFitRequest,
    response: motorFitResponse,
    compute: fitMotor,
  }),
  computeRoute({
    path: "/fit/leak",
    summary: "Power law of a skirt's leak from readings of pressure and flow",
    request: leakFitRequest,
    response: leakFitResponse,
    compute: fitLeak,
  }),
  computeRoute({
    path: "/fit/pull",
    summary: "Distribution of the pull from loads that held and loads that let go",
    request: pullFitRequest,
    response: pullFitResponse,
    compute: fitPull,
  }),
  computeRoute({
    path: "/fit/propeller",
    summary: "Thrust and power coefficients of an open propeller from a thrust test",
    request: propellerFitRequest,
    response: propellerFitResponse,
    compute: fitPropeller,
  }),
];
