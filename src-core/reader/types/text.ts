import type { Type } from "./types.ts";

/**
 * A type as people write it: `const uint8_t *`, `int [4]`, `void (*)(int)`. Names that typedefs gave to
 * arithmetic types are kept.
 */
export function typeText(type: Type): string {
  return declare(type, "");
}

/** The type written around a name, as in a declaration: `uint8_t buf[4]`. */
export function declarationText(type: Type, name: string): string {
  return declare(type, name);
}

function qualifierText(type: Type): string {
  return `${type.const === true ? "const " : ""}${type.volatile === true ? "volatile " : ""}`;
}

function declare(type: Type, inner: string): string {
  const spaced = (name: string) => `${qualifierText(type)}${name}${inner === "" ? "" : " "}${inner}`;
  switch (type.kind) {
    case "void":
      return spaced("void");
    case "integer":
    case "floating":
      return spaced(type.name);
    case "pointer":
      return declare(type.to, around(type.to, `*${qualifierText(type)}${inner}`.trimEnd()));
    case "reference":
      return declare(type.to, around(type.to, `${type.rvalue ? "&&" : "&"}${inner}`));
    case "array":
      return declare(type.of, `${inner}[${type.length ?? ""}]`);
    case "function": {
      const parameters = type.parameters.map(typeText);
      if (type.variadic) parameters.push("...");
      return declare(type.returns, `${inner}(${parameters.join(", ") || "void"})`);
    }
    case "record":
      return spaced(type.record.name === "" ? `unnamed ${type.record.keyword}` : type.record.name);
    case "enumeration":
      return spaced(type.enumeration.name === "" ? "unnamed enum" : type.enumeration.name);
    case "unknown":
      return spaced(type.name === "" ? "unknown type" : type.name);
  }
}

/** Pointers to arrays and functions need parentheses (C11 6.7.6). */
function around(to: Type, inner: string): string {
  return to.kind === "array" || to.kind === "function" ? `(${inner})` : inner;
}
