import { matchAngle, peekChain, startsChain } from "./chains.ts";
import { recover } from "./declarations.ts";
import { declarator } from "./declarators.ts";
import { expression, onlyComma } from "./expressions.ts";
import { item } from "./items.ts";
import type { Scan } from "./scan.ts";
import { specifiers, type Where } from "./specifiers.ts";
import { typeName } from "./type-names.ts";

/** Presents `template <...>` and the declaration behind it (C++ [temp.pre]). */
export function templateItem(scan: Scan, from: number, to: number, where: Where): number {
  const angle = scan.text(from + 1) === "<" ? matchAngle(scan, from + 1, to) : undefined;
  if (angle === undefined) return instantiation(scan, from, to);
  scan.names.enterTemplate();
  templateParameters(scan, from + 2, angle.close);
  // `template <>` only gives an existing template another body.
  scan.templated = angle.close > from + 2;
  const next = scan.nested(() => item(scan, angle.close + 1, to, where === "block" ? "file" : where));
  scan.templated = false;
  scan.names.leave();
  return next;
}

/** `template class R<int>;` makes code of what is known already: the grammar sees its semicolon. */
export function instantiation(scan: Scan, from: number, to: number): number {
  const next = recover(scan, from, to);
  scan.hideRange(from, next - 1);
  return next;
}

function templateParameters(scan: Scan, from: number, to: number): void {
  let at = from;
  while (at < to) {
    const start = at;
    const text = scan.text(at);
    const isType = (text === "typename" || text === "class") && !isQualifiedType(scan, at + 1, to);
    if (text === "template") at = to;
    else if (isType) at = typeParameter(scan, at + 1, to);
    else {
      const specified = specifiers(scan, at, to, "parameter");
      const end = declarator(scan, specified.next, to, { ...specified, where: "parameter" });
      if (end.name !== undefined) scan.names.declareTemplateParameter(end.name, "value");
      at = end.next;
      if (scan.text(at) === "=") at = expression(scan, at + 1, to, onlyComma);
    }
    while (at < to && scan.text(at) !== ",") at += 1;
    if (scan.text(at) === ",") at += 1;
    if (at === start) at += 1;
  }
}

/** `typename T::size n`: a value whose type is a member. */
function isQualifiedType(scan: Scan, at: number, to: number): boolean {
  return startsChain(scan, at) && peekChain(scan, at, to).qualifier !== undefined;
}

function typeParameter(scan: Scan, from: number, to: number): number {
  let at = scan.text(from) === "..." ? from + 1 : from;
  if (scan.isName(at)) {
    scan.names.declareTemplateParameter(scan.text(at), "type");
    at += 1;
  }
  return scan.text(at) === "=" ? typeName(scan, at + 1, to) : at;
}
