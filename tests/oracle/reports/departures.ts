import type { Example } from "../../../src-core/checks/rule.ts";
import { Chip } from "./chip.ts";
import { tryDecoder } from "./decoder-trial.ts";
import { type Departure, tryEncoder } from "./encoder-trial.ts";
import { notedFunction } from "./noted-function.ts";

/** Compiles a snippet, runs its function and says where it departs from the tables. */
export async function departuresOf(example: Example): Promise<readonly Departure[]> {
  const subject = notedFunction(example);
  const chip = await Chip.with(subject);
  return subject.directive === "encodes" ? tryEncoder(subject, chip) : tryDecoder(subject, chip);
}
