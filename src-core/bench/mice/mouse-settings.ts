import type { ReportLayout } from "../../model/layouts/layout.ts";
import { mouseDefaults } from "../../model/mouse-settings.ts";
import { deviceIds } from "../../model/replies.ts";
import { layouts } from "../../model/report-layouts.ts";

/** What commands set. */
export interface MouseSettings {
  /** Reports per second. */
  sampleRate: number;
  /** Argument of "set resolution", 0 to 3. */
  resolution: number;
  scaling: "1:1" | "2:1";
  mode: "stream" | "remote";
  reporting: boolean;
  wrapping: boolean;
  id: number;
}

export function defaultSettings(): MouseSettings {
  const { sampleRate, resolution, scaling, mode, reporting, id } = mouseDefaults;
  return { sampleRate, resolution, scaling, mode, reporting, wrapping: false, id };
}

/** How a mouse that answers with this id reports. */
export function layoutOfId(id: number): ReportLayout {
  return layouts[deviceIds.find(({ code }) => code === id)?.layout ?? "ps2-standard"];
}
