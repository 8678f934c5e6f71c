/** The settings that the server follows; the editor's settings of the same names under `edgewise`. */
export interface ServerSettings {
  /** Milliseconds without an edit before a check begins; 0 to 5000. */
  readonly checkDelay: number;
  /** Words are shown behind numbers. */
  readonly inlayHints: boolean;
}

export const defaultSettings: ServerSettings = { checkDelay: 250, inlayHints: false };

/** Settings from what a client sent, which may be anything; what is missing or wrong keeps its default. */
export function settingsFrom(sent: unknown): ServerSettings {
  const section = memberOf(sent, "edgewise");
  const checkDelay = memberOf(section, "checkDelay");
  return {
    checkDelay:
      typeof checkDelay === "number" && checkDelay >= 0 && checkDelay <= 5000
        ? checkDelay
        : defaultSettings.checkDelay,
    inlayHints: memberOf(section, "inlayHints") === true,
  };
}

/** Whether the client's `initializationOptions` ask for status notifications, which not every editor knows. */
export function wantsStatus(initializationOptions: unknown): boolean {
  return memberOf(initializationOptions, "status") === true;
}

/** Whether they say that the client has the commands that lenses carry. */
export function knowsLensCommands(initializationOptions: unknown): boolean {
  return memberOf(initializationOptions, "lensCommands") === true;
}

/** Whether they say that the client reads files for the server. */
export function handsFiles(initializationOptions: unknown): boolean {
  return memberOf(initializationOptions, "files") === true;
}

function memberOf(value: unknown, key: string): unknown {
  if (typeof value !== "object" || value === null) return undefined;
  return Object.entries(value).find(([name]) => name === key)?.[1];
}
