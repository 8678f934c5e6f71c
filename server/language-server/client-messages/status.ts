import type { Summary } from "../../../src-core/present/summary.ts";

/**
 * Notification to a client whose `initializationOptions` hold `"status": true`: the server began or ended
 * checking. Its parameters are a `CheckStatus`.
 */
export const statusNotification = "edgewise/status";

/** What the checks of all projects amount to. */
export type CheckStatus =
  | { readonly state: "checking" }
  | ({
      readonly state: "ready";
      /** Firmwares that were found. */
      readonly projects: number;
    } & Omit<Summary, "files">);
