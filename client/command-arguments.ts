import type { MovementSubject, RunSubject } from "../server/language-server/client-messages/lenses.ts";
import type { RunParams } from "../server/language-server/client-messages/runs.ts";

/** Commands are called by anybody, a key that is bound to one with nothing at all. */

export function isRunParams(value: unknown): value is RunParams {
  return hasTexts(value, "project", "stroke", "mouse", "pc");
}

export function isRunSubject(value: unknown): value is RunSubject {
  return (
    hasTexts(value, "project") && isLeftOut(value.shown, (shown) => hasTexts(shown, "mouse", "pc", "stroke"))
  );
}

export function isMovementSubject(value: unknown): value is MovementSubject {
  return (
    hasTexts(value, "project", "layout") &&
    hasTexts(value.subject, "file", "name") &&
    isLeftOut(value.given, (given) => typeof given === "string")
  );
}

function isLeftOut(value: unknown, isOtherwise: (value: unknown) => boolean): boolean {
  return value === undefined || isOtherwise(value);
}

function hasTexts(value: unknown, ...keys: readonly string[]): value is Readonly<Record<string, unknown>> {
  if (typeof value !== "object" || value === null) return false;
  return keys.every((key) => typeof (value as Readonly<Record<string, unknown>>)[key] === "string");
}
