import { encodeReport } from "../../model/layouts/encode.ts";
import { type Evidence, everything, saying, smallest } from "./evidence.ts";
import type { FaultDraft } from "./fault-draft.ts";

/**
 * report/length: more or fewer bytes than the layout has. A byte that may be left out says nothing then, and a whole
 * report may be left out while there is nothing to tell.
 */
export function judgeLength(evidence: Evidence): readonly FaultDraft[] {
  const { layout } = evidence;
  const whole = layout.bytes.length;
  const wrong = everything(evidence).filter(
    ({ values, bytes }) =>
      bytes.length !== whole &&
      bytes.length !== encodeReport(layout, values).length &&
      (bytes.length > 0 || saying(values).length > 0),
  );
  const example = smallest(wrong);
  if (example === undefined) return [];
  const { bytes, values } = example;
  const wanted = encodeReport(layout, values).length;
  const count = (number: number): string => (number === 1 ? "1 byte" : `${number} bytes`);
  return [
    {
      kind: "length",
      fields: [],
      what: `${count(bytes.length)} where a ${layout.name} report has ${wanted}`,
      values,
      place: bytes.length > whole ? { byte: whole, bit: 0 } : undefined,
      driver: undefined,
    },
  ];
}
