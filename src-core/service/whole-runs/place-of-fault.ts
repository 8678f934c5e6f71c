import type { Run } from "../../bench/run-record.ts";
import type { Failure } from "../../bench/verdicts/verdict.ts";
import type { Edge } from "../../bench/wires/edge.ts";
import type { Facts } from "../../facts/facts.ts";
import type { Span } from "../../finding.ts";
import { visibleRange } from "../../reader/tokens.ts";
import type { At } from "../../reader/typed/nodes.ts";
import type { ProjectReading } from "../project-reading.ts";

/** The best place that there is in the author's files for a failure: the code that caused it, or else what it is about. */
export function placeOfFault({ rule, span, time }: Failure, run: Run, reading: ProjectReading): Span {
  const { facts, project, files } = reading;
  const places = [span, ...placesFor(rule, time, run, facts), spanOf(run.firmware.lastAt), entryOf(facts)];
  const found = places.find((place) => place !== undefined && files.has(place.file));
  const file = project.units[0]?.mains[0] ?? project.root;
  return found ?? { file, start: 0, end: 0 };
}

function* placesFor(
  rule: string,
  time: number,
  { edges, mouse }: Run,
  facts: Facts,
): Generator<Span | undefined> {
  const { ps2, serial, wires } = facts;
  const ofFirmware = (edge: Edge, ...names: readonly Edge["wire"][]): boolean =>
    edge.cause.at !== undefined && names.includes(edge.wire);
  switch (rule) {
    case "ps2/no-pullup":
      yield ps2.clock?.span;
      yield wires.ps2.clock?.span;
      return;
    case "ps2/parity-unchecked":
    case "ps2/packet-resync":
      yield functionNoted("decodes", facts);
      yield ps2.data?.span;
      return;
    case "ps2/reporting-not-enabled": {
      const commands = ps2.sequences.toSorted((a, b) => b.bytes.length - a.bytes.length)[0]?.bytes;
      if (mouse.received.length > 0) yield commands?.at(-1)?.span;
      break;
    }
    case "report/counts-lost":
      yield functionNoted("encodes", facts);
      break;
  }
  if (rule.startsWith("ps2/")) {
    yield spanOf(edges.findLast((edge) => edge.time <= time && ofFirmware(edge, "clock", "data"))?.cause.at);
    yield ps2.clock?.span;
    yield wires.ps2.clock?.span;
    return;
  }
  // The first byte to the PC is the identification, or stands where it would be.
  yield spanOf(edges.find((edge) => edge.level === 0 && ofFirmware(edge, "rxd"))?.cause.at);
  yield serial.mouseSetUps[0]?.span;
  yield wires.serial.report?.span;
}

/** The name of a function that a note calls an encoder or a decoder. */
function functionNoted(kind: "encodes" | "decodes", { notes }: Facts): Span | undefined {
  for (const { note, targets } of notes.attached) {
    const [first] = targets;
    if (note.kind === kind && first?.target.kind === "function") return spanOf(first.target.function.at);
  }
  return undefined;
}

/** The name of the function in which the firmware goes round. */
function entryOf({ program }: Facts): Span | undefined {
  const entry = ["loop", "main", "setup"]
    .map((name) => program.functions.find((each) => each.name === name && each.memberOf === undefined))
    .find((each) => each?.definition !== undefined);
  return spanOf(entry?.at);
}

function spanOf(at: At | undefined): Span | undefined {
  if (at === undefined) return undefined;
  const { file, start, end } = visibleRange(at.first, at.last);
  return { file, start, end };
}
