import type { Variable } from "../../reader/typed/nodes.ts";
import type { Field } from "../../reader/types/types.ts";
import type { Register, Value } from "./values.ts";

/**
 * An object of the firmware that can hold a value: a variable, a member or element of one, a register, or an
 * object without a name. Compared by identity: the walk makes one place for each.
 */
export interface Place {
  readonly root: Variable | Register | "temporary";
  readonly of: Place | undefined;
  /** How it is reached from `of`. */
  readonly key: Field | number | undefined;
  /** What it holds; undefined where nothing was written yet. */
  value: Value | undefined;
}
