import { identificationOf } from "../../model/identification.ts";
import type { LayoutName } from "../../model/layouts/layout.ts";
import { idMarks } from "../../model/plug-and-play-id.ts";

/** Reads the answer to one question, character by character. */
export class IdentificationReader {
  readonly #sequences: readonly (readonly number[])[];
  readonly #codes: number[] = [];
  #endMark: number | undefined;
  #ended = false;

  constructor(layout: LayoutName) {
    this.#sequences = identificationOf(layout)?.sequences ?? [];
  }

  take(code: number): void {
    this.#codes.push(code);
    if (this.#endMark !== undefined) this.#ended ||= code === this.#endMark;
    else this.#endMark = idMarks.find(({ begin }) => begin === code)?.end;
  }

  /** The characters that a mouse with this layout usually sends are there. */
  get isUsual(): boolean {
    const [usual = []] = this.#sequences;
    return usual.length > 0 && this.#startsWith(usual);
  }

  /** An end mark after a begin mark has come. */
  get isWhole(): boolean {
    return this.#ended;
  }

  /** What has come is what some mouse with this layout sends, so that nothing is right where such mice send nothing. */
  get isRight(): boolean {
    return this.#sequences.some((sequence) =>
      sequence.length === 0 ? this.#codes.length === 0 : this.#startsWith(sequence),
    );
  }

  #startsWith(sequence: readonly number[]): boolean {
    return sequence.every((code, index) => this.#codes[index] === code);
  }
}
