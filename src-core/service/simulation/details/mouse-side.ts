import type { HostByte, MouseByte, Run } from "../../../bench/run-record.ts";
import type { IncomingReport, MouseFrame } from "../../../run-details.ts";
import { Conversation } from "./frame-meanings.ts";

/** Bytes on the PS/2 wires, decoded as mouse and host meant them. */
export function framesOf({ mouse }: Run): readonly MouseFrame[] {
  const conversation = new Conversation();
  const all = [
    ...mouse.sent.map((each) => ({ sender: "mouse", each }) as const),
    ...mouse.received.map((each) => ({ sender: "host", each }) as const),
  ].sort((a, b) => a.each.start - b.each.start);
  /** Bytes of a report that are whole; one that the host cut into, or asks for again, starts anew. */
  const done = new Map<number, number>();
  return all.map((one): MouseFrame => {
    const { start: from, end: to, byte } = one.each;
    if (one.sender === "host") {
      done.clear();
      const meaning = conversation.ofHost(byte, one.each.fault === "none");
      return { from, to, sender: "host", byte, meaning, report: undefined, fault: faultOfHost(one.each) };
    }
    const { report } = one.each;
    const fault = faultOfMouse(one.each);
    if (report === undefined) {
      const meaning = conversation.ofMouse(byte, one.each.whole);
      return { from, to, sender: "mouse", byte, meaning, report, fault };
    }
    const length = mouse.reports[report]?.bytes.length ?? 0;
    const number = ((done.get(report) ?? 0) % length) + 1;
    done.set(report, one.each.whole ? number : 0);
    return { from, to, sender: "mouse", byte, meaning: `byte ${number} of ${length}`, report, fault };
  });
}

function faultOfHost({ fault }: HostByte): string | undefined {
  switch (fault) {
    case "none":
      return undefined;
    case "parity":
      return "wrong parity";
    case "stop":
      return "no stop bit";
    case "cut-off":
      return "cut off by the host";
  }
}

function faultOfMouse({ whole, disturbed }: MouseByte): string | undefined {
  if (!whole) return "cut off by the host";
  return disturbed ? "a bit turned over on the way" : undefined;
}

export function incomingOf({ mouse }: Run): readonly IncomingReport[] {
  const begun = new Map<number, number>();
  for (const { report, start } of mouse.sent)
    if (report !== undefined && !begun.has(report)) begun.set(report, start);
  return mouse.reports.map(({ sampled, sentAt, bytes, values }, index) => ({
    from: begun.get(index) ?? sampled,
    to: sentAt,
    bytes,
    values,
  }));
}
