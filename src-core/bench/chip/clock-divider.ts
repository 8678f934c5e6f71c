import type { ChipCore } from "./chip-core.ts";

/** Cycles in which CLKPS may be written after CLKPCE. */
const changeCycles = 4;

/**
 * CLKPR divides the chip's clock by a power of two up to 256. It is taken to be 1 at reset: the fuse that would make it
 * 8 is not in the sources. Codes above 8 are reserved.
 */
export function addClockDivider(core: ChipCore): void {
  const change = core.bit("CLKPCE");
  const steps = [3, 2, 1, 0].map((bit) => core.bit(`CLKPS${bit}`));
  if (change === undefined) return;
  let changeUntil = -1;
  core.cpu.writeHooks[change.address] = (value) => {
    if (value === change.mask) changeUntil = core.now + changeCycles;
    else if (core.now <= changeUntil && (value & change.mask) === 0) {
      changeUntil = -1;
      core.cpu.data[change.address] = value;
      const step = core.number(steps);
      if (step > 8) core.tellNotSimulated("CLKPR: a reserved divider");
      else core.clock.divide(2 ** step, core.now);
    }
    return true;
  };
}
