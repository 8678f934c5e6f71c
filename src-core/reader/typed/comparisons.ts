import type { ComparisonOperator } from "./nodes.ts";

type Operators = Readonly<Record<ComparisonOperator, ComparisonOperator>>;

/** The operator that holds where this one does not. */
export const opposite: Operators = { "<": ">=", ">": "<=", "<=": ">", ">=": "<", "==": "!=", "!=": "==" };

/** The operator with the sides exchanged. */
export const mirrored: Operators = { "<": ">", ">": "<", "<=": ">=", ">=": "<=", "==": "==", "!=": "!=" };
