import type { Token } from "../../tokens.ts";
import type { RawNode } from "../grammar/raw-nodes.ts";
import type { Attribute, ChunkSyntax } from "../nodes.ts";
import type { Presentation, SpecifierRecord } from "../outline/presentation.ts";

/** Constructs nested deeper than this are not converted, so that whoever walks the tree needs no bound of its own. */
const deepest = 400;

/** What all converters share: the tokens, what the outline found out, and the notes made on the way. */
export class Reading {
  readonly tokens: readonly Token[];
  readonly presentation: Presentation;
  readonly notUnderstood: ChunkSyntax["notUnderstood"][number][] = [];
  private readonly taken: Uint8Array;
  private depth = 0;

  constructor(presentation: Presentation) {
    this.presentation = presentation;
    this.tokens = presentation.tokens;
    this.taken = new Uint8Array(presentation.attributes.length);
  }

  text(index: number): string {
    return this.tokens[index]?.text ?? "";
  }

  /** The specifiers whose type, or declarator where no type is written, starts at the token. */
  specifiers(first: number): SpecifierRecord | undefined {
    return this.presentation.specifiers.get(first);
  }

  note(first: number, end: number, what: string): void {
    this.notUnderstood.push({ first, end, what });
  }

  /** Runs `convert` one level deeper; gives `otherwise` where that is too deep. */
  deeper<T>(convert: () => T, otherwise: () => T): T {
    if (this.depth >= deepest) return otherwise();
    this.depth += 1;
    try {
      return convert();
    } finally {
      this.depth -= 1;
    }
  }

  /** The attributes that stand in the token range; each belongs to one construct, so they are given once. */
  takeAttributes(first: number, end: number): readonly Attribute[] {
    const { attributes } = this.presentation;
    if (attributes.length === 0) return [];
    const found: Attribute[] = [];
    for (let index = firstFrom(attributes, first); index < attributes.length; index += 1) {
      const attribute = attributes[index];
      if (attribute === undefined || attribute.first >= end) break;
      if (this.taken[index] === 1) continue;
      this.taken[index] = 1;
      found.push(attribute);
    }
    return found;
  }

  /** Where attribute syntax that ends just before the token begins; the token itself where there is none. */
  attributesBefore(first: number): number {
    return this.hiddenRun(first, -1);
  }

  /** Where attribute syntax that starts at the token ends. */
  attributesFrom(first: number): number {
    return this.hiddenRun(first, 1);
  }

  private hiddenRun(first: number, step: 1 | -1): number {
    const { attributes } = this.presentation;
    if (attributes.length === 0) return first;
    if (step === 1) {
      let end = first;
      for (let index = firstFrom(attributes, first); ; index += 1) {
        const attribute = attributes[index];
        if (attribute === undefined || attribute.first > end + bracketsAround) return end;
        if (!this.allHidden(end, attribute.first)) return end;
        end = attribute.end;
        while (this.isClosing(end)) end += 1;
      }
    }
    let start = first;
    for (let index = firstFrom(attributes, first) - 1; index >= 0; index -= 1) {
      const attribute = attributes[index];
      if (attribute === undefined || !this.allHidden(attribute.end, start)) return start;
      start = attribute.first;
      while (start > 0 && this.allHidden(start - 1, start) && this.isOpening(start - 1)) start -= 1;
    }
    return start;
  }

  private allHidden(first: number, end: number): boolean {
    for (let index = first; index < end; index += 1) {
      if (this.presentation.texts[index] !== "") return false;
    }
    return true;
  }

  private isClosing(index: number): boolean {
    return this.presentation.texts[index] === "" && (this.text(index) === ")" || this.text(index) === "]");
  }

  private isOpening(index: number): boolean {
    const text = this.text(index);
    return text === "(" || text === "[" || text === "__attribute__" || text === "__attribute";
  }
}

/** `__attribute__((` or `[[` before the first attribute's name. */
const bracketsAround = 3;

/** Index of the first attribute that starts at the token or behind it. */
function firstFrom(attributes: readonly Attribute[], first: number): number {
  let low = 0;
  let high = attributes.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((attributes[middle]?.first ?? 0) < first) low = middle + 1;
    else high = middle;
  }
  return low;
}

export function childOf(node: RawNode, field: string): RawNode | undefined {
  return node.children.find((child) => child.field === field);
}

export function childOfType(node: RawNode, type: string): RawNode | undefined {
  return node.children.find((child) => child.type === type);
}
