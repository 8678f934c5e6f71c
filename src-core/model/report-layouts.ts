import { fiveByte } from "./layouts/five-byte.ts";
import type { LayoutName, ReportLayout } from "./layouts/layout.ts";
import { middleButton } from "./layouts/middle-button.ts";
import { ps2FiveButton } from "./layouts/ps2-five-button.ts";
import { ps2Standard } from "./layouts/ps2-standard.ts";
import { ps2Wheel } from "./layouts/ps2-wheel.ts";
import { reportLayout } from "./layouts/read-rows.ts";
import { twoButton } from "./layouts/two-button.ts";
import { wheel } from "./layouts/wheel.ts";

/** Every layout by its name. */
export const layouts: Readonly<Record<LayoutName, ReportLayout>> = {
  "two-button": reportLayout(twoButton),
  "middle-button": reportLayout(middleButton),
  wheel: reportLayout(wheel),
  "five-byte": reportLayout(fiveByte),
  "ps2-standard": reportLayout(ps2Standard),
  "ps2-wheel": reportLayout(ps2Wheel),
  "ps2-five-button": reportLayout(ps2FiveButton),
};

/** Serial layouts first. */
export const reportLayouts: readonly ReportLayout[] = Object.values(layouts);

/** The layout of this name, as `report=` and `encodes` take it. */
export function layoutNamed(name: string): ReportLayout | undefined {
  return reportLayouts.find((each) => each.name === name);
}
