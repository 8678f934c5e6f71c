import type { Span } from "../finding.ts";
import { type Token, visibleRange, visibleSpan } from "../reader/tokens.ts";
import type { Enumerator, TypedExpression, Variable } from "../reader/typed/nodes.ts";
import { holds } from "./explanation.ts";
import type { NamedConstant } from "./named-constant.ts";
import type { Place } from "./place.ts";

/** A variable that stays the same or an enumerator: at its name, at its value, or where it is used. */
export function symbolConstantAt({ unit, file, offset }: Place): NamedConstant | undefined {
  const { references } = unit.typed;
  for (const { target, token } of references) {
    if (token.file !== file || !("kind" in target) || !isConstant(target)) continue;
    const isDeclaration = token === target.at.first;
    const isName = holds(token, file, offset);
    const span = isName ? token : isDeclaration ? valueSpan(target, unit, file, offset) : undefined;
    if (span === undefined) continue;
    const others = references.filter((each) => each.target === target && each.token !== target.at.first);
    return {
      name: target.name,
      part: !isName ? "value" : isDeclaration ? "name" : "use",
      span: { file: span.file, start: span.start, end: span.end },
      declared: target.at.first,
      uses: others.map((each) => visibleSpan(each.token)),
      value: target.kind === "enumerator" ? target : constantOf(target),
    };
  }
  return undefined;
}

type Constant = Variable | Enumerator;

function isConstant(target: { readonly kind: string }): target is Constant {
  return target.kind === "variable" || target.kind === "enumerator";
}

function constantOf({ initializer, type }: Variable): TypedExpression | undefined {
  return initializer?.kind === "value" && type.const === true ? initializer.value : undefined;
}

/** Where the place lies in a value of one token. */
function valueSpan(target: Constant, unit: Place["unit"], file: string, offset: number): Span | undefined {
  const value = target.kind === "variable" ? tokenOf(target) : valueToken(target, unit, file, offset);
  return value !== undefined && holds(value, file, offset) ? value : undefined;
}

function tokenOf(variable: Variable): Span | undefined {
  const value = constantOf(variable);
  return value !== undefined && value.at.first === value.at.last
    ? visibleRange(value.at.first, value.at.last)
    : undefined;
}

/** How far behind a name its value is looked for, in characters. */
const reach = 80;

/** The token behind `NAME =`, where it is the whole value. */
function valueToken(
  { at: { first: name } }: Enumerator,
  { preprocessed: { tokens } }: Place["unit"],
  file: string,
  offset: number,
): Token | undefined {
  if (name.file !== file || offset <= name.end || offset > name.end + reach) return undefined;
  const at = tokens.findIndex((each) => each.start === name.start && each.file === file);
  const after = tokens[at + 3]?.text;
  return tokens[at + 1]?.text === "=" && (after === "," || after === "}") ? tokens[at + 2] : undefined;
}
