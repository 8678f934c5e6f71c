import type { Service } from "../../../src-core/service/service.ts";
import { seenFrom } from "../../files/paths.ts";
import type { RunSourcesAnswer } from "../client-messages/runs.ts";
import type { WorkspaceFiles } from "../workspace-files.ts";
import { editedSince } from "./edited-since.ts";
import { notHeld, type RunSources } from "./shown-runs.ts";

interface SourcesNow {
  readonly service: Service;
  readonly files: WorkspaceFiles;
}

/** Which sources of a firmware are not any more what was run; `notHeld` where nobody knows what was. */
export function sourcesSince({ service, files }: SourcesNow, ran: RunSources | undefined): RunSourcesAnswer {
  if (ran === undefined) return notHeld;
  // Of a firmware that is not checked any more, the sources may be what they were.
  const read = new Set([...ran.texts.keys(), ...service.check(ran.project).files]);
  const edited = editedSince(ran.texts, files.textsOf([...read]));
  return { kind: "sources", edited: edited.map((file) => seenFrom(ran.root, file)) };
}
