import { deviceIds } from "../../model/replies.ts";
import { figure, figureOf, rememberedFigure } from "../time/figures.ts";
import { ms, us } from "../time/time.ts";
import type { MouseProfile, MouseTiming } from "./profile.ts";
import { between, exactly } from "./spread.ts";

/**
 * A mouse that gives nobody trouble: in the middle of the limits where there are two, quick where there is one. No document
 * says what is usual below the limits of noticing and answering, so a tenth of them is our own choice.
 */
const easyTiming: MouseTiming = {
  powerOnReset: exactly(figure("ps2.power-on-reset", "min")),
  selfTest: exactly(figure("ps2.self-test", "min")),
  clockLow: exactly((figure("ps2.clock-low", "min") + figure("ps2.clock-low", "max")) / 2),
  clockHigh: exactly((figure("ps2.clock-high", "min") + figure("ps2.clock-high", "max")) / 2),
  dataSetup: (figure("ps2.data-setup", "min") + figure("ps2.data-setup", "max")) / 2,
  sample: (figure("ps2.device-sample", "min") + figure("ps2.device-sample", "max")) / 2,
  acknowledgeRelease:
    (figure("ps2.acknowledge-release", "min") + figure("ps2.acknowledge-release", "max")) / 2,
  busHigh: figure("ps2.bus-high", "min"),
  requestNoticed: exactly(figure("ps2.request-poll", "max") / 10),
  response: exactly(figure("ps2.response-time", "max") / 10),
  leastRequestHold: figureOf("reference5170", "ps2.request-hold", "min"),
};

const plain: MouseProfile = {
  name: "plain",
  title: "Three buttons and three-byte reports; knows no knock.",
  stresses: [],
  buttons: ["left", "right", "middle"],
  knocks: [],
  timing: easyTiming,
  bus: "ps2",
  invalidBytes: "refused",
  resendRequestEvery: 0,
  disturbedByteEvery: 0,
  glitch: undefined,
  incident: undefined,
};

const wheel: MouseProfile = {
  ...plain,
  name: "wheel",
  title: "Three buttons and a wheel; the wheel knock turns four-byte reports on.",
  knocks: [{ name: "wheel", onlyWithId: undefined }],
};

const idOfWheel = deviceIds.find(({ layout }) => layout === "ps2-wheel")?.code;

const fiveButton: MouseProfile = {
  ...plain,
  name: "five-button",
  title: "Five buttons and a wheel; knows both knocks, in any order.",
  buttons: ["left", "right", "middle", "button4", "button5"],
  knocks: [
    { name: "wheel", onlyWithId: undefined },
    { name: "five-button", onlyWithId: undefined },
  ],
};

/** After this many whole reports something happens to the mice to which something does: early, so that it does in a click too. */
const underWay = 3;

/** Every mouse of the bench. Widths, counts and rests that no document gives are our own choice. */
export const mice: readonly MouseProfile[] = [
  plain,
  wheel,
  fiveButton,
  {
    ...fiveButton,
    name: "five-button-after-wheel",
    title: "Five buttons; takes the knock for them only after the wheel knock.",
    knocks: [
      { name: "wheel", onlyWithId: undefined },
      { name: "five-button", onlyWithId: idOfWheel },
    ],
  },
  {
    ...plain,
    name: "slow-to-start",
    title: "Comes up late, and its self-test takes from half a second to the longest there is.",
    stresses: ["ps2.power-on-reset", "ps2.self-test"],
    timing: {
      ...easyTiming,
      powerOnReset: exactly(figure("ps2.power-on-reset", "max")),
      selfTest: between(rememberedFigure("ps2.self-test", "min"), figure("ps2.self-test", "max")),
    },
  },
  {
    ...plain,
    name: "clock-at-10-khz",
    title: "The slowest clock: both phases as long as they may be, data as late as it may change.",
    stresses: ["ps2.clock-period", "ps2.clock-low", "ps2.clock-high", "ps2.device-sample"],
    timing: {
      ...easyTiming,
      clockLow: exactly(figure("ps2.clock-low", "max")),
      clockHigh: exactly(figure("ps2.clock-high", "max")),
      dataSetup: figure("ps2.data-setup", "max"),
      sample: figure("ps2.device-sample", "max"),
      acknowledgeRelease: figure("ps2.acknowledge-release", "max"),
    },
  },
  {
    ...plain,
    name: "clock-at-16-7-khz",
    title: "The fastest clock: both phases as short as they may be, and an early look at data.",
    stresses: ["ps2.clock-period", "ps2.clock-low", "ps2.clock-high", "ps2.device-sample"],
    timing: {
      ...easyTiming,
      clockLow: exactly(figure("ps2.clock-low", "min")),
      clockHigh: exactly(figure("ps2.clock-high", "min")),
      sample: figure("ps2.device-sample", "min"),
      acknowledgeRelease: figure("ps2.acknowledge-release", "min"),
    },
  },
  {
    ...plain,
    name: "jittering-clock",
    title: "Every phase of the clock is another length, anywhere within the limits.",
    stresses: ["ps2.clock-low", "ps2.clock-high"],
    timing: {
      ...easyTiming,
      clockLow: between(figure("ps2.clock-low", "min"), figure("ps2.clock-low", "max")),
      clockHigh: between(figure("ps2.clock-high", "min"), figure("ps2.clock-high", "max")),
    },
  },
  {
    ...plain,
    name: "strict-about-requests",
    title: "Notices a request to send only after the whole clock hold that documents ask for.",
    stresses: ["ps2.request-hold"],
    timing: { ...easyTiming, leastRequestHold: figure("ps2.request-hold", "min") },
  },
  {
    ...plain,
    name: "answers-at-once",
    title: "Clocks a request in and answers it as soon as the bus may be used.",
    stresses: ["ps2.first-edge", "ps2.bus-high"],
    timing: {
      ...easyTiming,
      requestNoticed: exactly(figure("ps2.first-edge", "min")),
      response: exactly(0),
    },
  },
  {
    ...plain,
    name: "answers-late",
    title: "Clocks a request in and answers it as late as mouse chips may.",
    stresses: ["ps2.request-poll", "ps2.response-time"],
    timing: {
      ...easyTiming,
      requestNoticed: exactly(figure("ps2.request-poll", "max")),
      response: exactly(figureOf("em84502", "ps2.response-time", "max")),
    },
  },
  {
    ...plain,
    name: "asks-for-resend",
    title: "Asks for every third byte of the host again.",
    stresses: ["ps2.attempts"],
    resendRequestEvery: 3,
  },
  {
    ...plain,
    name: "ignores-unknown-commands",
    title: "Gives no answer at all to a byte that it does not know.",
    stresses: ["ps2.reply-timeout", "ps2.command-gap"],
    invalidBytes: "ignored",
  },
  {
    ...plain,
    name: "disturbed-data",
    title: "In every seventh byte of its reports one data bit arrives turned over, so that parity is wrong.",
    stresses: [],
    disturbedByteEvery: 7,
  },
  {
    ...plain,
    name: "glitch-on-clock",
    title: "A short pulse on the clock in the rest before every third report.",
    stresses: ["ps2.bit-timeout", "ps2.receive-timeout"],
    // The rest is longer than a host waits for a byte, so that what the pulse began is over.
    glitch: { everyReports: 3, width: 2 * us, ahead: 2 * figure("ps2.receive-timeout", "min") },
  },
  {
    ...plain,
    name: "restarts-itself",
    title: "Restarts in the middle of a report, once, and announces itself again with reporting off.",
    stresses: ["ps2.self-test"],
    incident: { kind: "restart", afterReports: underWay, away: 0 },
  },
  {
    ...plain,
    name: "unplugged-and-plugged-again",
    title: "Is pulled out in the middle of a report, once, and comes back as after power-on.",
    stresses: ["ps2.power-on-reset", "ps2.self-test"],
    incident: { kind: "unplug", afterReports: underWay, away: 200 * ms },
  },
  {
    ...wheel,
    name: "usb-or-ps2",
    title: "Decides at power-up which bus it is on: PS/2 only where it finds both lines pulled up.",
    stresses: ["ps2.power-on-reset", "ps2.pull-up"],
    bus: "usb-or-ps2",
  },
];

export function mouseNamed(name: string): MouseProfile | undefined {
  return mice.find((each) => each.name === name);
}
