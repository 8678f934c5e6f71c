/**
 * Every id of the catalogue of rules, by group. Settings, `allow` notes, reports and tests use them, so an id is
 * a name for good: one whose rule this version does not check yet may be written all the same.
 */
const NAMES_BY_GROUP: Readonly<Record<string, readonly string[]>> = {
  board: [
    "clock-unknown",
    "divisor-range",
    "integer-overflow",
    "pin-no-interrupt",
    "pin-conflict",
    "shared-not-volatile",
    "shared-not-atomic",
    "delay-in-isr",
  ],
  serial: [
    "baud-error",
    "line-format",
    "bit-time",
    "idle-level",
    "ident-missing",
    "ident-late",
    "ident-wrong",
    "control-line-ignored",
    "throughput",
    "blocks-receive",
  ],
  ps2: [
    "request-hold-short",
    "line-driven-high",
    "no-pullup",
    "parity-unchecked",
    "parity-wrong",
    "command-unknown",
    "argument-range",
    "ack-ignored",
    "reset-wait-short",
    "reply-timeout-short",
    "reporting-not-enabled",
    "wait-forever",
    "wheel-sequence",
    "sample-edge",
    "clock-missed",
    "packet-resync",
  ],
  report: [
    "layout",
    "sync-bit",
    "y-direction",
    "sign-lost",
    "clip-missing",
    "button-map",
    "length",
    "counts-lost",
  ],
  note: ["syntax", "unknown-name", "mismatch", "unattached"],
};

/** `group/name` of each. */
export const ruleIds: readonly string[] = Object.entries(NAMES_BY_GROUP).flatMap(([group, names]) =>
  names.map((name) => `${group}/${name}`),
);
