import { expect, test } from "vitest";
import { cancel, newCancelFlag } from "../../../../server/language-server/trials/cancel-flag.ts";
import type { TrialAnswer, TrialRequest } from "../../../../server/language-server/trials/messages.ts";
import { TrialAnswerer } from "../../../../server/language-server/trials/trial-answerer.ts";
import { hostOfFiles, type SourceHost } from "../../../../src-core/reader/source-host.ts";
import { createService } from "../../../../src-core/service/create-service.ts";
import { noChoices } from "../../../../src-core/trial-details.ts";
import { hostIgnoringCase } from "../../../src-core/reader/host-ignoring-case.ts";
import { loadGrammar } from "../../../src-core/reader/syntax/load-grammar.ts";
import { encoderFirmware, rightMark, wrongMark } from "../../built/encoder-firmware.ts";

const grammar = await loadGrammar();
const makeService = (host: SourceHost) => createService({ host, grammar, startName: "" });
const answererOver = (files: Readonly<Record<string, string>>) =>
  new TrialAnswerer(hostOfFiles(files), makeService);
/** The last answer. */
const answerOf = (answerer: TrialAnswerer, request: TrialRequest): TrialAnswer => {
  const last = [...answerer.answer(request)].at(-1);
  if (last === undefined) throw new Error("no answer");
  return last;
};
const right = encoderFirmware(rightMark);
const wrong = encoderFirmware(wrongMark);

test("texts that were handed over go before those of the disk", () => {
  const answerer = answererOver({ "p/edgewise.json": "{}", "p/main.c": right });
  const triedWith = (text: string) => {
    const answer = answerOf(answerer, {
      project: "p",
      texts: new Map([["p/main.c", text]]),
      choices: noChoices,
      cancel: newCancelFlag(),
    });
    return answer.kind === "tried" ? answer.result.findings.map(({ rule }) => rule) : answer;
  };
  expect(triedWith(wrong)).toEqual(["report/sync-bit"]);
  expect(triedWith(right)).toEqual([]);
});

test("a header that was handed over goes before the disk's by whatever spelling it is included", () => {
  const main = '#include "Encoder.h"\n';
  const disk = hostIgnoringCase({ "p/edgewise.json": "{}", "p/main.c": main, "p/encoder.h": right });
  const answer = answerOf(new TrialAnswerer(disk, makeService), {
    project: "p",
    texts: new Map([["p/encoder.h", wrong]]),
    choices: noChoices,
    cancel: newCancelFlag(),
  });
  expect(answer).toMatchObject({ kind: "tried", result: { findings: [{ rule: "report/sync-bit" }] } });
});

test("what was not handed over is read from the disk", () => {
  const answerer = answererOver({ "p/edgewise.json": "{}", "p/main.c": wrong });
  const answer = answerOf(answerer, {
    project: "p",
    texts: new Map(),
    choices: noChoices,
    cancel: newCancelFlag(),
  });
  expect(answer).toMatchObject({ kind: "tried", result: { findings: [{ rule: "report/sync-bit" }] } });
});

test("every project of a folder is found again by its id", () => {
  const files = {
    "w/edgewise.json": "{}",
    "w/a.c": "",
    "w/inner/edgewise.json": "{}",
    "w/inner/b.c": "",
    "plain/main.c": "",
    "plain/sketch/sketch.ino": "",
    "box/lone.c": "",
  };
  const service = makeService(hostOfFiles(files));
  const ids = [".", "plain/main.c", "w/inner", "box"].flatMap((path) =>
    service.projectsAt(path).map(({ id }) => id),
  );
  expect(ids.length).toBeGreaterThanOrEqual(7);
  const answerer = answererOver(files);
  for (const project of ids) {
    const answer = answerOf(answerer, {
      project,
      texts: new Map(),
      choices: noChoices,
      cancel: newCancelFlag(),
    });
    expect({ project, kind: answer.kind }).toEqual({ project, kind: "tried" });
  }
});

test("what parts show is answered before what the whole firmware shows, and that is the last answer", () => {
  const answerer = answererOver({ "p/edgewise.json": "{}", "p/main.c": wrong });
  const answers = [
    ...answerer.answer({ project: "p", texts: new Map(), choices: noChoices, cancel: newCancelFlag() }),
  ];
  expect(answers).toMatchObject([
    { kind: "tried", isLast: false },
    { kind: "tried", isLast: true },
  ]);
});

test("a run that is cancelled says so, and one of a project that is gone says why it failed", () => {
  const answerer = answererOver({ "p/edgewise.json": "{}", "p/main.c": wrong });
  const flag = newCancelFlag();
  cancel(flag);
  expect(answerOf(answerer, { project: "p", texts: new Map(), choices: noChoices, cancel: flag })).toEqual({
    kind: "cancelled",
  });
  expect(
    answerOf(answerer, { project: "q", texts: new Map(), choices: noChoices, cancel: newCancelFlag() }),
  ).toMatchObject({
    kind: "failed",
    why: expect.stringContaining("not there any more"),
  });
});

test("a service that fails is an answer, and the next request is answered too", () => {
  let isBroken = true;
  const answerer = new TrialAnswerer(hostOfFiles({ "p/main.c": wrong }), (host) => {
    const service = makeService(host);
    return {
      ...service,
      tryOut(project, cancelled) {
        if (isBroken) throw new Error("inner fault");
        return service.tryOut(project, cancelled);
      },
    };
  });
  const ask = () =>
    answerOf(answerer, { project: "p", texts: new Map(), choices: noChoices, cancel: newCancelFlag() });
  expect(ask()).toEqual({ kind: "failed", why: "inner fault" });
  isBroken = false;
  expect(ask().kind).toBe("tried");
});
