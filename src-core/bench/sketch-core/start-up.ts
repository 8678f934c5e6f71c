import type { AvrChip } from "../../model/chips/chip.ts";
import { registerNamed } from "../../model/chips/find-bits.ts";
import { globalFlag, statusRegister } from "../chip/status-register.ts";
import type { Access } from "./access.ts";
import { bitNamed } from "./registers.ts";

/** Bits that `init` of `wiring.c` sets: the prescaler of 64 and PWM for each timer, and the overflow of timer 0. */
const usualBits = [
  ...["WGM01", "WGM00", "CS01", "CS00", "TOIE0"],
  ...["CS11", "CS10", "WGM10"],
  ...["CS22", "WGM20"],
  ...["CS31", "CS30", "WGM30"],
  ...["CS41", "CS40", "WGM40"],
  ...["CS51", "CS50", "WGM50"],
] as const;

/** Below 8 MHz timer 1 counts each eighth cycle. */
const fastOnly = "CS10";

/**
 * What the core's `init` does: interrupts on, timers as above, the first USART off. The analogue converter and the timer
 * of 10 bits are left alone, for nothing on the bench comes of them.
 */
export function initialise(model: AvrChip, clockHz: number, access: Access): void {
  access.change(statusRegister, 0, globalFlag);
  const narrow = model.timers.filter(({ width }) => width === 10).map(({ number }) => String(number));
  for (const name of usualBits) {
    const timer = /\d/.exec(name)?.[0] ?? "";
    const bit = bitNamed(model, name);
    if (bit === undefined || narrow.includes(timer) || (name === fastOnly && clockHz < 8_000_000)) continue;
    access.change(bit.address, 0, bit.mask);
  }
  const firstUsart = registerNamed(model.registers, "UCSR0B");
  if (firstUsart !== undefined) access.write(firstUsart.address, 0);
}
