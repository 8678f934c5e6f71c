import type { RelatedPlace, Span } from "../../finding.ts";
import { evaluate } from "../../reader/constants/evaluate.ts";
import { visibleSpan } from "../../reader/tokens.ts";
import type { FunctionSymbol, TypedExpression } from "../../reader/typed/nodes.ts";
import type { Type } from "../../reader/types/types.ts";
import { type NoteProblem, noteProblem, replacement } from "../note-problem.ts";
import { suggestionFor } from "../suggestion.ts";
import { pathOf } from "../values/operand.ts";
import type { Attached } from "./attach.ts";
import type { ReadUnit, Target } from "./declared.ts";
import { allFields, hasMethod, type KnownName, knownNames, recordBehind } from "./known-names.ts";

/** `note/mismatch` where notes name what the code has not, or call constant what has no constant value. */
export function checkAgainstCode(attached: Iterable<Attached>): readonly NoteProblem[] {
  const problems: NoteProblem[] = [];
  for (const each of attached) {
    // A declaration in a header is the same in every unit.
    const [first] = each.targets;
    if (first !== undefined) problems.push(...checkOne(each, first.target, first.unit));
  }
  return problems;
}

function* checkOne({ note }: Attached, target: Target, unit: ReadUnit): Generator<NoteProblem> {
  switch (note.kind) {
    case "means": {
      const why = whyNotConstant(target, unit);
      if (why !== undefined) {
        const message = `\`means\` needs a constant value, but ${why}`;
        yield noteProblem("note/mismatch", note.span, message, { related: declaredAt(target) });
      }
      break;
    }
    case "encodes":
    case "decodes": {
      if (target.kind !== "function") break;
      const code: Code = { symbol: target.function, names: knownNames(target.function, unit), unit };
      for (const { operand } of note.fields) {
        const { path, negated, bit } = operand.value;
        const start = operand.span.start + (negated ? 1 : 0);
        const named = yield* checkPath(path, { ...operand.span, start }, code, VALUES);
        const bits = named === undefined ? undefined : widthOf(named);
        if (bit === undefined || bits === undefined || bit < bits) continue;
        const what = bits === 1 ? "is one bit" : `has bits 0 to ${bits - 1}`;
        yield noteProblem(
          "note/mismatch",
          operand.span,
          `\`${path.join(".")}\` ${what}, so there is no bit ${bit}`,
        );
      }
      const bytes = note.kind === "encodes" ? note.into : note.from;
      const sorts = note.kind === "encodes" ? VALUES_AND_FUNCTIONS : VALUES;
      yield* checkPath(pathOf(bytes.value), bytes.span, code, sorts);
      break;
    }
    case "try":
  }
}

interface Code {
  readonly symbol: FunctionSymbol;
  readonly names: readonly KnownName[];
  readonly unit: ReadUnit;
}

const VALUES: readonly KnownName["kind"][] = ["parameter", "member", "global"];
/** The bytes of a report may go to a function as well. */
const VALUES_AND_FUNCTIONS: readonly KnownName["kind"][] = [...VALUES, "function"];

/** What a path of names ends at. */
interface Named {
  readonly type: Type;
  /** Of bit-fields. */
  readonly bitWidth: number | undefined;
}

/** Bits of a whole number, or of one that is pointed to; undefined for anything else. */
function widthOf({ type, bitWidth }: Named): number | undefined {
  switch (type.kind) {
    case "integer":
      return bitWidth ?? (type.rank === "bool" ? 1 : type.bits);
    case "enumeration":
      return widthOf({ type: type.enumeration.underlying, bitWidth });
    case "pointer":
    case "reference":
      return widthOf({ type: type.to, bitWidth: undefined });
    default:
      return undefined;
  }
}

/** `span` starts with the first name of `path`. Returns what the path names, where that is a value that is known. */
function* checkPath(
  path: readonly string[],
  span: Span,
  { symbol, names, unit }: Code,
  sorts: readonly KnownName["kind"][],
): Generator<NoteProblem, Named | undefined> {
  const [root = "", ...members] = path;
  const fitting = names.filter((known) => sorts.includes(known.kind));
  const found = fitting.find((known) => known.name === root);
  if (found === undefined) {
    const parameters = symbol.parameterNames.filter((name) => name !== undefined);
    const { phrase, best } = suggestionFor(root, nearFirst(root, parameters, fitting));
    const place = { file: span.file, start: span.start, end: span.start + root.length };
    const message = `\`${symbol.name}\` has no parameter \`${root}\`${phrase}`;
    const fixes = best === undefined ? [] : [replacement(place, best)];
    yield noteProblem("note/mismatch", place, message, { fixes });
    return undefined;
  }
  let type: Type = found.type;
  let bitWidth: number | undefined;
  for (const member of members) {
    const record = recordBehind(type);
    if (record === undefined) return undefined;
    const fields = allFields(record);
    const field = fields.find((each) => each.name === member);
    if (field === undefined) {
      if (sorts.includes("function") && member === members.at(-1) && hasMethod(record, member, unit))
        return undefined;
      const { phrase } = suggestionFor(
        member,
        fields.map((each) => each.name),
      );
      const owner = record.name === "" ? root : record.name;
      yield noteProblem("note/mismatch", span, `\`${owner}\` has no member \`${member}\`${phrase}`);
      return undefined;
    }
    ({ type, bitWidth } = field);
  }
  return { type, bitWidth };
}

/** Only the parameters where one of them is near or nothing is: a list of all globals would help nobody. */
function nearFirst(
  name: string,
  parameters: readonly string[],
  fitting: readonly KnownName[],
): readonly string[] {
  const all = fitting.map((known) => known.name);
  const parametersWin = suggestionFor(name, parameters).best !== undefined;
  return parametersWin || suggestionFor(name, all).best === undefined ? parameters : all;
}

/** Why the target has no constant value; undefined where it has one or nobody can tell. */
function whyNotConstant(target: Target, { typed }: ReadUnit): string | undefined {
  switch (target.kind) {
    case "macro":
      if (target.macro.parameters !== undefined) return `\`${target.name}\` takes parameters`;
      return target.macro.body.length === 0 ? `\`${target.name}\` is defined as nothing` : undefined;
    case "variable": {
      const { initializer } = target.variable;
      if (initializer === undefined) return `\`${target.name}\` is given no value where it is declared`;
      if (initializer.kind !== "value" || !isComputed(initializer.value)) return undefined;
      const value = evaluate(initializer.value, typed.model);
      return value.kind === "unknown" ? `\`${target.name}\` gets its value when it runs` : undefined;
    }
    case "field":
      return `\`${target.name}\` is a field, which each object has for itself`;
    case "enumerator":
    case "function":
      return undefined;
  }
}

/** A call or the value of a variable; other expressions may be unknown only because a header is missing. */
function isComputed(expression: TypedExpression): boolean {
  if (expression.kind === "convert") return isComputed(expression.operand);
  return expression.kind === "call" || expression.kind === "method-call" || expression.kind === "variable";
}

function declaredAt(target: Target): readonly RelatedPlace[] {
  const span = targetSpan(target);
  return span === undefined ? [] : [{ span, message: `\`${target.name}\` is declared here` }];
}

function targetSpan(target: Target): Span | undefined {
  switch (target.kind) {
    case "macro":
      return target.macro.definition;
    case "variable":
      return visibleSpan(target.variable.at.first);
    case "enumerator":
      return visibleSpan(target.enumerator.at.first);
    case "function":
      return visibleSpan(target.function.at.first);
    case "field":
      return undefined;
  }
}
