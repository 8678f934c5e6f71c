import type { Span } from "../../../finding.ts";
import { visibleRange } from "../../../reader/tokens.ts";
import type { At } from "../../../reader/typed/nodes.ts";

/** Numbers for places in the source, each place once. */
export class Places {
  readonly spans: Span[] = [];
  readonly #numbers = new Map<string, number>();
  /** Most edges come from few places, which are the same objects. */
  readonly #known = new Map<At, number>();

  numberOf(at: At | undefined): number | undefined {
    if (at === undefined) return undefined;
    const known = this.#known.get(at);
    if (known !== undefined) return known;
    const { file, start, end } = visibleRange(at.first, at.last);
    const key = `${file} ${start} ${end}`;
    const number = this.#numbers.get(key) ?? this.spans.push({ file, start, end }) - 1;
    this.#numbers.set(key, number);
    this.#known.set(at, number);
    return number;
  }
}
