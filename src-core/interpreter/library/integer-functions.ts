import { writeUnsigned } from "./target-text.ts";
import { numberAt, type Passed, type Subject } from "./values.ts";

/** Quotient towards zero. */
function quotient(parameters: Passed, first: number): number {
  return Math.trunc(numberAt(parameters, first) / numberAt(parameters, first + 1));
}

function remainder(parameters: Passed, first: number): number {
  return numberAt(parameters, first) % numberAt(parameters, first + 1);
}

/** Integer arithmetic: C11 7.22.6. div and ldiv build their result at the address that comes first. */
export const integerFunctions: Subject = {
  abs: (parameters) => Math.abs(numberAt(parameters, 0)),
  labs: (parameters) => Math.abs(numberAt(parameters, 0)),
  div(parameters, memory, { model }) {
    const bytes = model.int / 8;
    writeUnsigned(memory, numberAt(parameters, 0), quotient(parameters, 1), bytes);
    writeUnsigned(memory, numberAt(parameters, 0) + bytes, remainder(parameters, 1), bytes);
    return undefined;
  },
  ldiv(parameters, memory) {
    writeUnsigned(memory, numberAt(parameters, 0), quotient(parameters, 1), 4);
    writeUnsigned(memory, numberAt(parameters, 0) + 4, remainder(parameters, 1), 4);
    return undefined;
  },
};
