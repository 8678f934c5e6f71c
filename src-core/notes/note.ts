import type { Span } from "../finding.ts";
import type { Comment } from "../reader/tokens.ts";
import type { Movement } from "../trial-details.ts";
import type { Operand } from "./values/operand.ts";
import type { BoardWords, Ps2Words, Said, SerialWords } from "./wires.ts";

/** A wire note as read: only what was understood; the rest is among the problems. */
export type Note = BoardNote | Ps2Note | SerialNote | AttachedNote;

/** Notes that belong to a declaration or statement rather than to the project. */
export type AttachedNote = MeansNote | EncodesNote | DecodesNote | TryNote | AllowNote;

interface NoteBase {
  /** From `@wire` to the end of the last word. */
  readonly span: Span;
  /** The word after `@wire`. */
  readonly directive: Span;
  /** The comment that holds the note. */
  readonly comment: Comment;
}

export interface BoardNote extends NoteBase {
  readonly kind: "board";
  readonly board: BoardWords;
}

export interface Ps2Note extends NoteBase {
  readonly kind: "ps2";
  readonly ps2: Ps2Words;
}

export interface SerialNote extends NoteBase {
  readonly kind: "serial";
  readonly serial: SerialWords;
}

export interface MeansNote extends NoteBase {
  readonly kind: "means";
  /** Id of a quantity of the model. */
  readonly quantity: Said<string>;
}

/** One `field=operand`. */
export interface FieldOperand {
  readonly field: Said<string>;
  readonly operand: Said<Operand>;
}

export interface EncodesNote extends NoteBase {
  readonly kind: "encodes";
  /** Id of a layout of the model. */
  readonly layout: Said<string>;
  readonly fields: readonly FieldOperand[];
  /** Array that gets the bytes, or function called with each byte, by its name or through a pointer. */
  readonly into: Said<string>;
}

export interface DecodesNote extends NoteBase {
  readonly kind: "decodes";
  readonly layout: Said<string>;
  readonly from: Said<string>;
  readonly fields: readonly FieldOperand[];
}

export const BUTTONS = ["left", "right", "middle", "button4", "button5"] as const;
export type Button = (typeof BUTTONS)[number];

export interface TryNote extends NoteBase, Movement {
  readonly kind: "try";
}

export interface AllowNote extends NoteBase {
  readonly kind: "allow";
  /** Rule id. */
  readonly rule: Said<string>;
  readonly reason: Said<string>;
}

export function belongsToProject(note: Note): note is BoardNote | Ps2Note | SerialNote {
  return note.kind === "board" || note.kind === "ps2" || note.kind === "serial";
}
