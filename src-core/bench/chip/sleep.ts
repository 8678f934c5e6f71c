import type { Chip } from "./chip.ts";

/** What SLEEP comes to: nothing without its enable bit, waiting in idle mode, or the end of what can be run. */
export type Sleep =
  | { readonly kind: "awake" }
  | { readonly kind: "idle" }
  | { readonly kind: "never"; readonly message: string };

/** What the SLEEP instruction does now, by the chip's registers. */
export function sleepOf(chip: Chip): Sleep {
  const { core, watchdog, interruptsEnabled } = chip;
  if (!core.isSet(core.bit("SE"))) return { kind: "awake" };
  // Mode 0 is idle in every chip: table "Sleep Mode Select" of the datasheets.
  if (core.number(["SM2", "SM1", "SM0"].map((name) => core.bit(name))) !== 0) {
    return {
      kind: "never",
      message: "the code sleeps in a mode other than idle, which the bench cannot simulate",
    };
  }
  if (!interruptsEnabled && !watchdog.isRunning) {
    return { kind: "never", message: "the code sleeps with interrupts off: nothing can wake it" };
  }
  return { kind: "idle" };
}
