import type { Quantity } from "./quantity.ts";

/** What the adapter chooses as the host of the PS/2 port: holds and sampling points. */
export const ps2HostTiming: readonly Quantity[] = [
  {
    id: "ps2.request-hold",
    title: "clock hold before sending",
    meaning:
      "The host holds the clock low this long before it pulls data low and lets the clock go, so that the mouse notices that the host wants to send.",
    kind: "setting",
    unit: "us",
    min: 100,
    typical: 200,
    sources: [
      { document: "ps2ProtocolArticle", place: "Host-to-Device" },
      { document: "touchpadGuide", place: "3.2.2" },
      { document: "tp8452", place: "section e" },
    ],
    confidence: "read",
    disagreement: [
      {
        note: "older text, for keyboards: more than 60 us",
        min: 60,
        sources: [{ document: "reference5170", place: "Keyboard Data Input" }],
        confidence: "read",
      },
      {
        note: "what one kernel driver holds, with a margin",
        typical: 200,
        sources: [{ document: "ps2GpioSource", place: "constants" }],
        confidence: "read",
      },
    ],
    rules: ["ps2/request-hold-short"],
  },
  {
    id: "ps2.inhibit-hold",
    title: "clock hold to keep the mouse quiet",
    meaning: "The host holds the clock low at least this long to make the mouse stop and keep its bytes.",
    kind: "setting",
    unit: "us",
    min: 100,
    sources: [
      { document: "ps2ProtocolArticle", place: "Device-to-Host" },
      { document: "touchpadGuide", place: "3.2.2" },
    ],
    confidence: "read",
    disagreement: [
      {
        note: "older text, for keyboards: more than 60 us",
        min: 60,
        sources: [{ document: "reference5170", place: "Keyboard Data Output" }],
        confidence: "read",
      },
    ],
    rules: ["ps2/request-hold-short"],
  },
  {
    id: "ps2.inhibit-after-byte",
    title: "inhibit after a byte",
    meaning:
      "To be sure that no further byte begins, the host pulls the clock low at the latest this long after the 11th clock.",
    kind: "setting",
    unit: "us",
    max: 50,
    sources: [{ document: "lpc47m102", place: "Fig. 33, t5" }],
    confidence: "read",
    rules: [],
  },
  {
    id: "ps2.sample-delay",
    title: "host samples after the falling edge",
    meaning: "When the mouse sends, the host reads the data line this long after the clock fell.",
    kind: "setting",
    unit: "us",
    max: 25,
    typical: 15,
    sources: [{ document: "ps2ProtocolArticle", place: "Device-to-Host (advised 15 to 25 us)" }],
    confidence: "read",
    disagreement: [
      {
        note: "window of one kernel driver",
        min: 30,
        max: 50,
        sources: [{ document: "ps2GpioSource", place: "constants" }],
        confidence: "read",
      },
    ],
    rules: ["ps2/sample-edge"],
  },
  {
    id: "ps2.data-change-delay",
    title: "host changes data after the falling edge",
    meaning: "When the host sends, it puts the next bit on the data line this soon after the clock fell.",
    kind: "setting",
    unit: "us",
    min: 0,
    max: 22.5,
    typical: 15,
    sources: [{ document: "hdns2200", place: "p. 9, T3" }],
    confidence: "read",
    disagreement: [
      {
        note: "advised point, mid-cell",
        min: 15,
        max: 25,
        sources: [{ document: "ps2ProtocolArticle", place: "Host-to-Device" }],
        confidence: "read",
      },
    ],
    rules: ["ps2/sample-edge"],
  },
  {
    id: "ps2.data-settled",
    title: "data settled after the rising edge",
    meaning: "When the host sends, its bit must be stable at the latest this long after the clock rose.",
    kind: "setting",
    unit: "us",
    max: 1,
    sources: [{ document: "hdns2200", place: "p. 9, note 2" }],
    confidence: "read",
    rules: ["ps2/sample-edge"],
  },
  {
    id: "ps2.override-clock",
    title: "last clock at which the host may cut in",
    meaning:
      "The host may cut a byte off before this rising clock edge; later it has to take the byte. The mouse repeats the whole report.",
    kind: "figure",
    unit: "none",
    max: 10,
    sources: [
      { document: "auxiliaryDeviceTimings", place: "receive steps" },
      { document: "em84502", place: "section D" },
      { document: "reference5170", place: "Keyboard Data Output" },
      { document: "paw3402", place: "8.1" },
    ],
    confidence: "read",
    disagreement: [
      {
        note: "before the 11th clock",
        max: 11,
        sources: [{ document: "ps2ProtocolArticle", place: "Device-to-Host" }],
        confidence: "read",
      },
    ],
    rules: [],
  },
];
