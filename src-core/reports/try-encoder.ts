import { bytesText } from "../figures.ts";
import type { Misstep } from "../interpreter/outcome.ts";
import { encodeReport } from "../model/layouts/encode.ts";
import type { ReportLayout } from "../model/layouts/layout.ts";
import type { ReportValues } from "../model/layouts/values.ts";
import type { EncodesNote } from "../notes/note.ts";
import { placeToBlame } from "./blame/blame.ts";
import { foundLayout, type Observed } from "./found/found-layout.ts";
import { isUsual, operandsByField } from "./inputs/domain.ts";
import { type Axis, buttonSets, mixtures, successions, sweep } from "./inputs/samples.ts";
import type { Evidence } from "./judge/evidence.ts";
import type { FaultDraft } from "./judge/fault-draft.ts";
import { judgeEncoder } from "./judge/judge-encoder.ts";
import type { ReportFault } from "./report-trial.ts";
import { Encoder } from "./subject/encoder.ts";
import type { Sent } from "./subject/encoder-call.ts";
import { stopped } from "./subject/not-tried.ts";
import { operandText } from "./subject/operands.ts";
import type { Met, Request, Tried } from "./trial-request.ts";

/** Runs an encoder over its inputs and judges what comes out. Throws `NotTried` where it cannot be run. */
export function tryEncoder(request: Request, note: EncodesNote, layout: ReportLayout): Tried {
  const encoder = new Encoder(request, note, layout);
  const { movements, buttons } = operandsByField(layout, encoder.operands, request);
  const axes: readonly Axis[] = movements;
  const watcher = new Watcher(encoder);
  const pressed = watcher.observe(buttonSets(buttons));
  const swept = new Map(axes.map((axis) => [axis, watcher.observe(sweep(axis))]));
  const mixed = watcher.observe(mixtures(axes, buttons));
  const returnsLength = watcher.counts();
  const settle = returnsLength ? withReturnedLength : plainly;
  const evidence: Omit<Evidence, "found"> = {
    layout,
    axes,
    buttons,
    pressed: pressed.map(settle),
    swept: new Map([...swept].map(([axis, sent]) => [axis, sent.map(settle)])),
    mixed: mixed.map(settle),
    followed: (encoder.ownsItsBytes ? successions(axes, buttons) : []).map(({ before, values }) => {
      const { on, over } = encoder.sendAfter(before, values);
      const alone = sentBy(encoder, values);
      const bytesOf = (sent: Sent): readonly number[] => settle({ values, ...whole(sent) }).bytes;
      return { before, values, alone: bytesOf(alone), on: bytesOf(on), over: bytesOf(over) };
    }),
  };
  const all = [...evidence.mixed, ...evidence.pressed, ...[...evidence.swept.values()].flat()];
  const found = foundLayout(layout, all, axes, buttons);
  const drafts = judgeEncoder({ ...evidence, found });
  const faults = drafts.map((draft) => faultOf(draft, request, layout, encoder, settle));
  const met = [
    ...unnamed(axes, request),
    ...watcher.missteps,
    ...readsOfHardware(encoder, request, successions(axes, buttons)),
  ];
  return { found, faults, returnsLength, met, calls: all.length };
}

/** Every report has both; a wheel or a button that the note leaves out may be one that the mouse has not. */
function unnamed(axes: readonly Axis[], { symbol }: Request): readonly Met[] {
  return (["x", "y"] as const)
    .filter((name) => !axes.some(({ field }) => field.name === name))
    .map((name) => ({
      message: `its note does not say what ${name} is, so ${name} is not checked`,
      at: symbol.at,
    }));
}

/** What a report depends on that no note can name: registers, which were taken as 0. */
function readsOfHardware(
  encoder: Encoder,
  { symbol }: Request,
  inputs: readonly { readonly values: ReportValues }[],
): readonly Met[] {
  for (const { values } of inputs) {
    const { sent, asked } = encoder.sendLit(values);
    if (sent.kind === "stopped" && sent.stop.reason === "cancelled") throw stopped(sent.stop);
    if (asked.length === 0) return [];
    if (sent.kind === "sent" && bytesText(sent.bytes) === bytesText(sentBy(encoder, values).bytes)) continue;
    return [
      {
        message: `the report depends on ${asked.join(", ")}, taken as 0 where nothing is connected`,
        at: symbol.at,
      },
    ];
  }
  return [];
}

type Calls = Observed & { readonly returned: number | undefined };

/** Calls an encoder and remembers what it returned. */
class Watcher {
  readonly #encoder: Encoder;
  readonly #returned = new Set<number | undefined>();
  /** Undefined behaviour that was met with movements as they come; the largest of a type are asking for it. */
  readonly missteps: Misstep[] = [];

  constructor(encoder: Encoder) {
    this.#encoder = encoder;
  }

  observe(inputs: readonly ReportValues[]): readonly Calls[] {
    return inputs.map((values) => {
      const met = this.#encoder.missteps.length;
      const { bytes, returned } = sentBy(this.#encoder, values);
      if (isUsual(values)) this.missteps.push(...this.#encoder.missteps.slice(met));
      this.#returned.add(returned);
      return { values, bytes, returned };
    });
  }

  /** Whether what it returns can only be the number of its bytes: never as small as true or false. */
  counts(): boolean {
    return [...this.#returned].every((each) => each !== undefined && each > 1 && each <= mostBytes);
  }
}

/** No layout has as many bytes; what is larger counts something else. */
const mostBytes = 8;

function plainly({ values, bytes }: Calls): Observed {
  return { values, bytes };
}

/** Bytes that were written and not counted are not sent. */
function withReturnedLength({ values, bytes, returned }: Calls): Observed {
  return { values, bytes: bytesReturned(bytes, returned) };
}

/** As many as the function says that it made. */
export function bytesReturned(bytes: readonly number[], returned: number | undefined): readonly number[] {
  const length = returned ?? bytes.length;
  return Array.from({ length }, (_, index) => bytes[index] ?? 0);
}

function sentBy(encoder: Encoder, values: ReportValues): Extract<Sent, { kind: "sent" }> {
  return whole(encoder.send(values));
}

/** Throws `NotTried` for a call that did not end. */
function whole(sent: Sent): Extract<Sent, { kind: "sent" }> {
  if (sent.kind === "stopped") throw stopped(sent.stop, undefined, sent.asked);
  return sent;
}

function faultOf(
  draft: FaultDraft,
  { program, symbol }: Request,
  layout: ReportLayout,
  encoder: Encoder,
  settle: (calls: Calls) => Observed,
): ReportFault {
  const { values, before, place, driver, kind, fields, what } = draft;
  const sent = before === undefined ? sentBy(encoder, values) : whole(encoder.sendAfter(before, values).over);
  const { operands } = encoder;
  const { bytes } = settle({ values, ...sent });
  const right = encodeReport(layout, values);
  const inWords = (input: ReportValues): string => {
    const said = operands.map((bound) => operandText(bound, input)).filter((text) => !text.endsWith("=0"));
    return said.length === 0 ? "all at rest" : said.join(", ");
  };
  const stores = sent.written.filter(({ byte }) => byte === place?.byte);
  const blamed =
    before === undefined
      ? placeToBlame(program, { place, driver, written: sent.written, operands })
      : stores.at(-1)?.at;
  return {
    kind,
    fields,
    what,
    example: {
      values,
      given: before === undefined ? inWords(values) : `${inWords(values)} after ${inWords(before)}`,
      came: bytesText(bytes),
      right: bytesText(right),
    },
    place,
    at: blamed ?? symbol.at,
    fixes: [],
  };
}
