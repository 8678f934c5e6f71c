import { rules } from "../checks/registry.ts";
import type { RuleDescription } from "../rule-description.ts";

/** Every rule that this version checks. */
export const ruleDescriptions: readonly RuleDescription[] = rules.map(
  ({ id, title, severity, why, source }) => ({ id, title, severity, why, source }),
);
