/**
 * The part of JSON Schema (draft-07) that the schema of edgewise.json is written in. `patternErrorMessage`,
 * `enumDescriptions` and `markdownEnumDescriptions` are understood by editors and ignored by other validators.
 */
export type SchemaNode = SchemaObject | SchemaArray | SchemaString | SchemaInteger;

interface Described {
  readonly description?: string;
  readonly examples?: readonly unknown[];
}

export interface SchemaObject extends Described {
  readonly type: "object";
  readonly properties?: Readonly<Record<string, SchemaNode>>;
  /** What other names hold; `false` where there are none. */
  readonly additionalProperties: SchemaNode | false;
  readonly propertyNames?: { readonly pattern: string; readonly patternErrorMessage: string };
  /** Names of which not all may be there at once. */
  readonly not?: { readonly required: readonly string[] };
}

export interface SchemaArray extends Described {
  readonly type: "array";
  readonly items: SchemaNode;
}

export interface SchemaString extends Described {
  readonly type: "string";
  readonly enum?: readonly string[];
  readonly enumDescriptions?: readonly string[];
  /** Markdown, for editors that show it beside the name. */
  readonly markdownEnumDescriptions?: readonly string[];
  readonly pattern?: string;
  /** What was expected, without the final stop. */
  readonly patternErrorMessage?: string;
  /** Ways to be right besides: names that editors propose, and others that only the file itself knows. */
  readonly anyOf?: readonly SchemaString[];
}

export interface SchemaInteger extends Described {
  readonly type: "integer";
  readonly minimum: number;
  readonly maximum: number;
}

/** A schema as it is published. */
export interface SchemaDocument extends SchemaObject {
  readonly $schema: string;
  readonly title: string;
}

/** The schema of one property; undefined where there is none of that name. */
export function propertySchema(schema: SchemaObject, name: string): SchemaNode | undefined {
  const { properties = {}, additionalProperties } = schema;
  if (Object.hasOwn(properties, name)) return properties[name];
  return additionalProperties === false ? undefined : additionalProperties;
}
