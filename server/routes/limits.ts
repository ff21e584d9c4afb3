import { limitsOf } from "../../shared/decide/limits/limits.ts";
import { type LimitsRequest, limitsRequest, limitsResponse } from "../../shared/model/api/limits.ts";
import { computation } from "./compute.ts";

/** JSON knows no infinity: at rest a factor or a share of the way has no number. */
const finite = (value: number | null) => (value !== null && Number.isFinite(value) ? value : null);

function limitsFor(request: LimitsRequest) {
  const { air, rotor, motor, pack, supply, skirt, vehicle, charge } = request;
  const { motorLimits, rotorBody, rotorMass, fallHeight } = request;
  const limits = limitsOf({
    build: { air, rotor, motor, pack, supply, skirt, vehicle, startCharge: charge },
    motor: motorLimits,
    rotor: rotorBody,
    rotorMass,
    fallHeight,
    estimated: [],
  });
  return {
    ...limits,
    limits: limits.limits.map(({ estimated: _stated, ...limit }) => ({
      ...limit,
      ratio: finite(limit.ratio),
    })),
    rotor: { ...limits.rotor, factor: finite(limits.rotor.factor) },
  };
}

/** What of a build given inline burns or bursts first, and how near all the rest is. */
export const limitsComputation = computation({
  path: "/limits",
  summary: "What burns or bursts first: winding, voltage, currents, rotor, each against its limit; energies",
  request: limitsRequest,
  response: limitsResponse,
  compute: limitsFor,
  isQuick: () => true,
});
