import { workersOf } from "../../../workers/node/start-worker.ts";
import type { StartWorker } from "../trial-worker.ts";
import { trialRole } from "./trial-role.ts";

/** Starts workers of Node that run `program`, which has to look for `trialRole`. */
export function workersRunning(program: URL, megabytes?: number): StartWorker {
  // The server may end without asking whether a trial is still on.
  const common = { program, role: trialRole, keepsProcess: false };
  return workersOf(megabytes === undefined ? common : { ...common, megabytes });
}
