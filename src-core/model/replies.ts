import type { Confidence, Source } from "./sources.ts";

export interface Reply {
  readonly code: number;
  readonly name: string;
  readonly meaning: string;
  readonly sources: readonly Source[];
  readonly confidence: Confidence;
}

export const acknowledge: Reply = {
  code: 0xfa,
  name: "acknowledge",
  meaning: "The mouse took the byte; it comes first after every valid command and every valid argument.",
  sources: [
    { document: "em84502", place: "section E, command table" },
    { document: "ht82m35x", place: "p. 3" },
  ],
  confidence: "read",
};

export const resendRequest: Reply = {
  code: 0xfe,
  name: "resend request",
  meaning:
    "The mouse did not understand: a bad command, a bad argument or a parity error; send the byte again.",
  sources: [
    { document: "em84502", place: "section D i" },
    { document: "sc84512", place: "p. 7" },
  ],
  confidence: "read",
};

export const errorReply: Reply = {
  code: 0xfc,
  name: "error",
  meaning: "A second bad byte in a row; after a reset, a self-test that failed.",
  sources: [
    { document: "em84502", place: "section D ii" },
    { document: "sc84512", place: "p. 7" },
    { document: "reference5160", place: "p. 4-25 (self-test)" },
  ],
  confidence: "read",
};

export const selfTestPassed: Reply = {
  code: 0xaa,
  name: "self-test passed",
  meaning: "Sent after power-on and reset, and followed by the id byte.",
  sources: [
    { document: "em84502", place: "section E a" },
    { document: "adnk5023", place: "p. 9, App. F" },
  ],
  confidence: "read",
};

/** Replies that are not data. */
export const replies: readonly Reply[] = [acknowledge, resendRequest, errorReply, selfTestPassed];

export function replyByCode(code: number): Reply | undefined {
  return replies.find((each) => each.code === code);
}

/** Id bytes, and the layout of the reports that a mouse with this id sends. */
export interface DeviceId {
  readonly code: number;
  readonly layout: "ps2-standard" | "ps2-wheel" | "ps2-five-button";
  readonly meaning: string;
  readonly sources: readonly Source[];
}

export const deviceIds: readonly DeviceId[] = [
  {
    code: 0x00,
    layout: "ps2-standard",
    meaning: "plain mouse, three-byte reports",
    sources: [
      { document: "em84502", place: "section E" },
      { document: "paw3402", place: "6.1" },
    ],
  },
  {
    code: 0x03,
    layout: "ps2-wheel",
    meaning: "wheel mouse, four-byte reports",
    sources: [
      { document: "ht82m35x", place: "p. 3" },
      { document: "paw3402", place: "6.2" },
    ],
  },
  {
    code: 0x04,
    layout: "ps2-five-button",
    meaning: "mouse with five buttons and a wheel, four-byte reports",
    sources: [
      { document: "sentelicNotes", place: "section A" },
      { document: "psmouseSource", place: "id detection" },
    ],
  },
];
