import type { ExternalInterrupt, PinChangeInterrupt } from "../../model/chips/chip.ts";
import { interruptSenses } from "../../model/chips/interrupt-senses.ts";
import type { ChipCore } from "./chip-core.ts";
import type { Interrupt } from "./interrupts.ts";
import { hookAfter, type PortPin, type Ports } from "./port.ts";

/** Connects the interrupts that pins ask for; outputs of the chip itself ask as well. */
export function addPinInterrupts(core: ChipCore, ports: Ports): void {
  const groups = new Map<string, Interrupt>();
  for (const { name, externalInterrupt, pinChange } of core.model.pins) {
    const pin = ports.pin(name);
    if (pin === undefined) continue;
    if (externalInterrupt !== undefined) addExternal(core, pin, externalInterrupt);
    if (pinChange !== undefined) addPinChange(core, pin, pinChange, groups);
  }
}

/**
 * INTn: an edge sets the flag whether the interrupt is enabled or not; a low level asks as long as it lasts and has no
 * flag. EICRA, EIMSK and EIFR in the register descriptions of the datasheets, from memory.
 */
function addExternal(core: ChipCore, { port, bit }: PortPin, external: ExternalInterrupt): void {
  const { vector, enable, flag, sense } = external;
  if (flag === undefined || sense === undefined) return;
  const interrupt = core.interrupt(vector, core.bitAt(flag), core.bitAt(enable), {
    clearedBy: "taking",
    plainFlag: true,
    plainEnable: true,
  });
  const senseBits = sense.map((each) => core.bitAt(each));
  if (interrupt === undefined) return;
  const sensed = () => interruptSenses[core.number(senseBits)];
  const hold = () => {
    interrupt.held = sensed() === "low level" && port.level(bit) === 0;
    interrupt.refresh();
  };
  port.onLevel((changed, level) => {
    if (changed !== bit) return;
    const now = sensed();
    if (now === "low level") hold();
    else if (now === "any change" || (now === "rising edge") === (level === 1)) interrupt.raise();
  });
  for (const address of new Set(senseBits.map((each) => each?.address))) {
    if (address !== undefined) hookAfter(core, address, hold);
  }
  hookAfter(core, interrupt.source.enable.address, hold);
}

/** PCINTn: a change of a pin whose mask bit is 1 sets the flag of its group. */
function addPinChange(
  core: ChipCore,
  { port, bit }: PortPin,
  change: PinChangeInterrupt,
  groups: Map<string, Interrupt>,
): void {
  const { vector, mask, enable, flag } = change;
  const maskBit = core.bitAt(mask);
  const interrupt =
    groups.get(vector) ??
    core.interrupt(vector, flag && core.bitAt(flag), core.bitAt(enable), {
      clearedBy: "taking",
      plainFlag: true,
      plainEnable: true,
    });
  if (interrupt === undefined) return;
  groups.set(vector, interrupt);
  port.onLevel((changed) => {
    if (changed === bit && core.isSet(maskBit)) interrupt.raise();
  });
}
