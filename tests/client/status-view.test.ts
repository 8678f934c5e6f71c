import { expect, test } from "vitest";
import { statusView } from "../../client/status-view.ts";

const ready = { state: "ready", projects: 1, errors: 0, warnings: 0, infos: 0 } as const;

test("a folder without firmware shows nothing", () => {
  expect(statusView({ ...ready, projects: 0 }).visible).toBe(false);
});

test("what was found is counted in the text and told in the tooltip", () => {
  const view = statusView({ ...ready, projects: 2, errors: 3, warnings: 1, infos: 2 });
  expect(view.text).toBe("Edgewise: 3 errors, 1 warning");
  expect(view.tooltip).toBe("Edgewise checked 2 firmwares: 3 errors, 1 warning, 2 infos");
  expect(view.emphasis).toBe("warning");
});

test("infos alone are no reason for emphasis", () => {
  expect(statusView({ ...ready, infos: 4 })).toMatchObject({ text: "$(check) Edgewise", emphasis: "none" });
});

test("a checker that is turned off leads to its setting", () => {
  expect(statusView({ state: "off" })).toMatchObject({
    command: ["workbench.action.openSettings", "edgewise.enable"],
    visible: true,
  });
});

test("one that ended by itself is told of behind what was found, until it is given up", () => {
  const twice = { times: 2, at: "14:05:11" };
  expect(statusView({ ...ready, errors: 1 }, twice)).toMatchObject({
    text: "Edgewise: 1 error",
    tooltip:
      "Edgewise checked 1 firmware: 1 error, 0 warnings, 0 infos. It ended unexpectedly and was started again 2 times, last at 14:05:11.",
  });
  expect(statusView({ state: "gave-up" }, twice)).toMatchObject({
    text: "$(error) Edgewise: ended",
    command: ["edgewise.restart"],
    emphasis: "error",
  });
});
