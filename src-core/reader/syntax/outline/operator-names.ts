import { prefix } from "./declarators.ts";
import type { Scan } from "./scan.ts";
import { specifiers } from "./specifiers.ts";

/** Presents `operator+`, `operator[]`, `operator bool`; gives the position behind it. */
export function operatorName(scan: Scan, at: number, to: number): number {
  const first = scan.text(at + 1);
  if ((first === "(" || first === "[") && scan.close(at + 1, to) === at + 2) {
    scan.show(at + 1, first === "(" ? "()" : "[]");
    scan.hide(at + 2);
    return at + 3;
  }
  if (first === "new" || first === "delete") {
    if (scan.text(at + 2) !== "[") return at + 2;
    scan.show(at + 2, "[]");
    scan.hide(at + 3);
    return at + 4;
  }
  if (scan.isLiteral(at + 1)) return literalOperator(scan, at + 1);
  if (!scan.isIdentifier(at + 1) && first !== "::") return at + 2;
  const specified = specifiers(scan, at + 1, to, "type");
  return prefix(scan, specified.next, to);
}

/** `""_ms` (C++ [over.literal]), whose suffix the lexer may have left apart. */
function literalOperator(scan: Scan, at: number): number {
  if (scan.isIdentifier(at + 1)) return at + 2;
  scan.show(at, '"" _');
  return at + 1;
}

/** An operator's name in an expression (`a.operator[](1)`), which the grammar sees as one identifier. */
export function operatorInExpression(scan: Scan, at: number, to: number): number {
  const first = scan.text(at + 1);
  let end = at + 2;
  if (first === "(" || first === "[") end = scan.close(at + 1, to) + 1;
  else if (first === "new" || first === "delete") end = scan.text(at + 2) === "[" ? at + 4 : at + 2;
  else while (end < to && scan.isIdentifier(at + 1) && scan.text(end) !== "(") end += 1;
  scan.show(at, "operator_");
  scan.hideRange(at + 1, end);
  return end;
}
