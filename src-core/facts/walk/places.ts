import type { TypedExpression, Variable } from "../../reader/typed/nodes.ts";
import type { Field, Type } from "../../reader/types/types.ts";
import type { Register, Trace, Value } from "./values.ts";

export type Root = Variable | RegisterRoot | TemporaryRoot;

/** A register of the chip, or a pin whose register is not known. */
export interface RegisterRoot {
  readonly kind: "register";
  readonly register: Register;
  /** Only the firmware changes it: direction and output latch of a port. */
  readonly latch: boolean;
}

/** An object without a name; `literal` is the string it holds. */
interface TemporaryRoot {
  readonly kind: "temporary";
  readonly literal: Extract<TypedExpression, { kind: "string" }> | undefined;
}

/**
 * An object of the firmware that can hold a value: a variable, a member or element of one, a register, or an
 * object without a name. Compared by identity: a walk makes one place for each.
 */
export interface Place {
  readonly root: Root;
  readonly of: Place | undefined;
  /** How it is reached from `of`. */
  readonly key: Field | number | undefined;
  /** Undefined where it is not known, as behind unknown pointers. */
  readonly type: Type | undefined;
  /**
   * What it holds; undefined where nothing was written yet. On an object with members or elements: what those
   * hold that were not written one by one.
   */
  value: Value | undefined;
  /** Set where interrupt handlers write it, so that its value is never known. */
  readonly shared: Trace | undefined;
  /** The one value that the program writes into it; `"several"` once there were two. */
  settled: Value | "several" | undefined;
  children: Map<Field | number, Place> | undefined;
  /** How many calls deep the object was made; 0 for what outlives them. */
  depth: number;
}
