import type { Chip } from "../../model/chips/chip.ts";
import type { ConstantProblem } from "../../reader/constants/problems.ts";
import type { Blocking } from "./blocking.ts";
import type { Clock } from "./clock.ts";
import type { Handler } from "./handlers.ts";
import type { InterruptRequest } from "./interrupt-requests.ts";
import type { PinRole } from "./pin-roles.ts";
import type { RegisterState } from "./register-states.ts";
import type { SharedObject } from "./shared-variables.ts";
import type { TimerSetUp } from "./timer-set-ups.ts";

/** What is known of the chip, its clock, its interrupts and its pins. */
export interface BoardFacts {
  /** Undefined while nobody says which it is. */
  readonly chip: Chip | undefined;
  readonly clock: Clock | undefined;
  readonly handlers: readonly Handler[];
  readonly shared: readonly SharedObject[];
  readonly blocking: readonly Blocking[];
  readonly interruptRequests: readonly InterruptRequest[];
  readonly pinRoles: readonly PinRole[];
  /** By name, what registers hold once the program has set them up. */
  readonly registers: () => ReadonlyMap<string, RegisterState>;
  readonly timers: () => readonly TimerSetUp[];
  readonly brokenConstants: readonly ConstantProblem[];
}
