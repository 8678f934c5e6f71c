import type { Scan } from "./scan.ts";

/** Bodies of member functions know the types that stand behind them in their class (C++ [class.mem]). */
export function declareMemberTypes(scan: Scan, from: number, to: number): void {
  for (let at = from; at < to; at += 1) {
    const text = scan.text(at);
    if (text === "(" || text === "[" || text === "{") at = scan.close(at, to);
    else if (text === "using" && scan.text(at + 2) === "=") scan.names.declare(scan.text(at + 1), "type");
    else if (text === "enum" || text === "struct" || text === "class" || text === "union") {
      const nameAt = text === "enum" && !scan.isName(at + 1) ? at + 2 : at + 1;
      const behind = scan.text(nameAt + 1);
      const isOwn = behind === "{" || behind === ":" || behind === ";";
      if (isOwn && scan.isName(nameAt) && scan.text(at - 1) !== "friend") {
        scan.names.declare(scan.text(nameAt), "type");
      }
    } else if (text === "typedef") at = declareTypedef(scan, at, to);
  }
}

/** The plain form, `typedef T name;`; gives the position of its semicolon. */
function declareTypedef(scan: Scan, from: number, to: number): number {
  let at = from + 1;
  while (at < to && scan.text(at) !== ";") {
    if (scan.text(at) === "{" || scan.text(at) === "(") at = scan.close(at, to);
    at += 1;
  }
  if (at < to && scan.isName(at - 1)) scan.names.declare(scan.text(at - 1), "type");
  return at;
}
