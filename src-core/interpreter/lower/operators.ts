import type { ArithmeticOperator, At } from "../../reader/typed/nodes.ts";
import { CannotLower } from "./scope.ts";
import { type Shape, wrapped, wrappedWide } from "./shape.ts";

/** JavaScript for an operator whose operands have the result's shape; shift counts are numbers. */
export function lowerArithmetic(
  operator: ArithmeticOperator,
  left: string,
  right: string,
  shape: Shape,
  place: number,
  at: At,
): string {
  switch (shape.kind) {
    case "integer":
      return ofNumbers(operator, left, right, shape, place);
    case "wide":
      return ofWide(operator, left, right, shape, place);
    case "floating": {
      if (operator !== "+" && operator !== "-" && operator !== "*" && operator !== "/") break;
      const code = `(${left}${operator}${right})`;
      return shape.bits === 32 ? `fround${code}` : code;
    }
    default:
      break;
  }
  throw new CannotLower(`\`${operator}\` on these operands`, at);
}

function ofNumbers(
  operator: ArithmeticOperator,
  left: string,
  right: string,
  shape: Extract<Shape, { kind: "integer" }>,
  place: number,
): string {
  const { bits, signed } = shape;
  if (shape.width < bits) {
    // Computed in the next wider type, and cut.
    return wrapped(ofNumbers(operator, left, right, { ...shape, signed, width: bits }, place), shape);
  }
  switch (operator) {
    case "+":
    case "-": {
      const exact = `(${left}${operator}${right})`;
      return signed ? `wrap${bits === 32 ? 4 : 2}(${exact},${place})` : wrapped(exact, shape);
    }
    case "*":
      if (bits === 32) return signed ? `mul4(${left},${right},${place})` : `(imul(${left},${right})>>>0)`;
      return signed ? `wrap2((${left}*${right}),${place})` : wrapped(`(${left}*${right})`, shape);
    case "/":
      return `${signed ? "divs" : "divu"}(${left},${right},${bits},${place})`;
    case "%":
      return `mod(${left},${right},${place})`;
    case "<<":
      return wrapped(`shl(${left},${right},${bits},${place})`, shape);
    case ">>":
      return `${signed ? "shrs" : "shru"}(${left},${right},${bits},${place})`;
    case "&":
    case "|":
    case "^": {
      const code = `(${left}${operator}${right})`;
      return signed ? code : wrapped(code, shape);
    }
  }
}

function ofWide(
  operator: ArithmeticOperator,
  left: string,
  right: string,
  shape: Extract<Shape, { kind: "wide" }>,
  place: number,
): string {
  const { signed, width } = shape;
  const cut = (code: string): string => wrappedWide(code, shape);
  switch (operator) {
    case "+":
    case "-":
    case "*":
      return signed && width === 64
        ? `wrap8((${left}${operator}${right}),${place})`
        : cut(`(${left}${operator}${right})`);
    case "/":
      return cut(`divw(${left},${right},${signed},${place})`);
    case "%":
      return `modw(${left},${right},${place})`;
    case "<<":
      return cut(`shlw(${left},${right},${place})`);
    case ">>":
      return `shrw(${left},${right},${place})`;
    case "&":
    case "|":
    case "^":
      return cut(`(${left}${operator}${right})`);
  }
}
