import { library } from "../../interpreter/library/library.ts";
import type { OutsideBody } from "../../interpreter/outcome.ts";
import type { FunctionSymbol } from "../../reader/typed/nodes.ts";
import type { Type } from "../../reader/types/types.ts";
import { turnCycles } from "./function-cycles.ts";

/**
 * `print`, `println` and `write` of several bytes (`Print.cpp`): what they do is the library's, which counts no cycles. Added
 * to those of each byte that is written are those of the loop around it, and of the division that makes a digit. Floating
 * numbers are counted by their characters alone.
 */
export function printing(symbol: FunctionSymbol): OutsideBody | undefined {
  const { standIn, memberOf, name, type } = symbol;
  if (!standIn || memberOf?.name !== "Print" || !/^(print|println|write)$/.test(name)) return undefined;
  const body = library(symbol);
  if (body === undefined) return undefined;
  const [first] = type.parameters;
  const isNumber = name !== "write" && first?.kind === "integer" && !first.plainChar;
  const isBlock = name === "write" && type.parameters.length === 2 && !isText(first);
  return (parameters, memory, surroundings) => {
    if (isNumber) {
      const digits = digitsOf(Math.abs(Number(parameters[1] ?? 0)), Number(parameters[2] ?? 0));
      surroundings.wait(digits * turnCycles.printedDigit);
    }
    const count = body(parameters, memory, surroundings);
    // The others write their bytes by way of this one.
    if (isBlock) surroundings.wait(Number(count ?? 0) * turnCycles.printedByte);
    return count;
  };
}

function isText(type: Type | undefined): boolean {
  return type?.kind === "pointer" && type.to.kind === "integer" && type.to.plainChar === true;
}

/** How many digits `printNumber` makes: it takes bases below 2 for 10, but 0 is a plain byte. */
function digitsOf(value: number, base: number): number {
  if (base === 0) return 0;
  let digits = 0;
  let left = value;
  do {
    left = Math.floor(left / (base < 2 ? 10 : base));
    digits += 1;
  } while (left > 0);
  return digits;
}
