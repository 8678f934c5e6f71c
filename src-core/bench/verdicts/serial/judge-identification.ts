import { hexText } from "../../../figures.ts";
import { identificationOf } from "../../../model/identification.ts";
import { formatSources } from "../../../model/sources.ts";
import type { At } from "../../../reader/typed/nodes.ts";
import type { Answer } from "../../pcs/pc-record.ts";
import type { ReceivedByte } from "../../pcs/uart/received-byte.ts";
import type { Run } from "../../run-record.ts";
import { figure } from "../../time/figures.ts";
import type { Time } from "../../time/time.ts";
import type { FindingsOfRun } from "../findings.ts";
import type { Identified } from "../verdict.ts";
import { startOfByte } from "./start-of-byte.ts";

const LATEST = figure("serial.ident-delay", "max");
/** What comes still later is no answer. */
const WHOLE = figure("pnp.id-time", "max");

/** What the adapter said each time RTS came on, and when. */
export function judgeIdentification(run: Run, findings: FindingsOfRun): readonly Identified[] {
  const judge = new Judge(run, findings);
  return run.pc.answers.map((answer) => judge.judge(answer));
}

class Judge {
  readonly #run: Run;
  readonly #findings: FindingsOfRun;
  readonly #sequences: readonly (readonly number[])[];

  constructor(run: Run, findings: FindingsOfRun) {
    this.#run = run;
    this.#findings = findings;
    this.#sequences = identificationOf(run.wanted.layout.name)?.sequences ?? [];
  }

  judge(answer: Answer): Identified {
    const first = answer.bytes[0] ?? this.#lateAnswer(answer.asked);
    const bytes = answer.bytes.map(({ value }) => value);
    const { asked, outcome } = answer;
    const identified: Identified = {
      asked,
      outcome,
      bytes,
      delay: first === undefined ? undefined : first.time - asked,
    };
    if (outcome === "open" && first === undefined) return identified;
    // A mouse that says nothing sends its reports whenever something moves.
    const mayBeSilent = this.#sequences.some((sequence) => sequence.length === 0);
    if (first === undefined) {
      if (!mayBeSilent) this.#nothing(answer);
    } else if (!mayBeSilent || (outcome === "identified" && bytes.length > 0)) {
      this.#delays(asked, first, answer.bytes);
    }
    if (outcome === "wrong") this.#wrong(answer);
    return identified;
  }

  /** What begins an identification, after the PC waits no longer. */
  #lateAnswer(asked: Time): ReceivedByte | undefined {
    const until = Math.min(this.#askedAgain(asked) ?? this.#run.ended, asked + WHOLE);
    return this.#run.pc.bytes.find(({ from, value }) => from >= asked && from < until && this.#begins(value));
  }

  #askedAgain(since: Time): Time | undefined {
    return this.#run.edges.find(({ wire, level, time }) => wire === "rts" && level === 0 && time > since)
      ?.time;
  }

  #nothing({ asked }: Answer): void {
    const isNew = this.#run.pc.bytes.every(({ value }) => !this.#begins(value));
    this.#findings.fail({
      rule: isNew ? "serial/ident-missing" : "serial/control-line-ignored",
      message: isNew
        ? `the PC turns RTS on and nothing comes in time: send ${this.#usual()} then`
        : `the PC turns RTS off and on again and nothing comes in time: send ${this.#usual()} each time`,
      time: asked,
      at: undefined,
      otherwise: this.#run.firmware.places?.rts ?? this.#run.firmware.places?.main,
    });
  }

  #delays(asked: Time, first: ReceivedByte, bytes: readonly ReceivedByte[]): void {
    const what = "the identification is there only after";
    const rule = "serial/ident-late";
    this.#findings.measureTime(
      "serial.ident-delay",
      first.time - asked,
      rule,
      what,
      first.time,
      this.#startOf(first),
    );
    if (first.time - asked > LATEST) return;
    const length = Math.max(...this.#sequences.map((sequence) => sequence.length));
    for (const [index, byte] of bytes.slice(1, length).entries()) {
      const gap = byte.time - (bytes[index]?.time ?? byte.time);
      const then = "from one character of the identification to the next pass";
      this.#findings.measureTime(
        "serial.ident-character-gap",
        gap,
        rule,
        then,
        byte.time,
        this.#startOf(byte),
      );
    }
  }

  #wrong({ asked, bytes }: Answer): void {
    const wrong = bytes.find(({ value }, index) => value !== this.#sequences[0]?.[index]) ?? bytes.at(-1);
    const came = bytes.slice(0, 8).map(({ value }) => hexText(value));
    this.#findings.fail({
      rule: "serial/ident-wrong",
      message: `the adapter says ${came.join(" ")} when RTS comes on; a mouse with this layout says ${this.#usual()}`,
      time: wrong?.time ?? asked,
      at: wrong && this.#startOf(wrong),
      ...(wrong === undefined ? {} : { measured: { value: wrong.value, unit: "hex" } as const }),
      source: formatSources(identificationOf(this.#run.wanted.layout.name)?.sources ?? []),
    });
  }

  #startOf({ from }: ReceivedByte): At | undefined {
    return startOfByte(this.#run.edges, from);
  }

  #begins(value: number): boolean {
    return this.#sequences.some(([first]) => first === value);
  }

  #usual(): string {
    const [usual = []] = this.#sequences;
    return usual.length === 0 ? "nothing" : usual.map(hexText).join(" ");
  }
}
