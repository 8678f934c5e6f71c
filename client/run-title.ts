import type { Firmware, RunParams } from "../server/language-server/client-messages/runs.ts";

/** Title of the tab of a run: with its firmware's name where the workspace has several. */
export function runTitle(
  { project, stroke, mouse, pc }: RunParams,
  firmwares: readonly Pick<Firmware, "project" | "name">[],
): string {
  const title = `Run: ${stroke}, ${mouse}, ${pc}`;
  const own = firmwares.find((firmware) => firmware.project === project);
  return own === undefined || firmwares.length === 1 ? title : `${title} (${own.name})`;
}
