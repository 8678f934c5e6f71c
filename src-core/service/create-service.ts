import type { CheckResult } from "../check-result.ts";
import { inlayHints } from "../explain/inlay-hints.ts";
import type { ProposedNotes } from "../note-proposal.ts";
import { findProjects } from "../project/find-projects.ts";
import type { Project } from "../project/project.ts";
import { proposeNotes } from "../proposals/propose-notes.ts";
import type { SourceHost } from "../reader/source-host.ts";
import { actionsAt, noteActionsAt } from "./actions.ts";
import { completeAt } from "./complete.ts";
import type { Grammar } from "./grammar.ts";
import { hoverAt } from "./hover.ts";
import { lensesOf } from "./lenses.ts";
import { lineValuesOf } from "./line-values.ts";
import { planMatrix, runCell } from "./matrix.ts";
import { movementsFor } from "./movements.ts";
import { ProjectReader } from "./project-reading.ts";
import { ProjectState } from "./project-state.ts";
import type { ProjectEntry, Service } from "./service.ts";
import { runChoices, simulateReading } from "./simulate.ts";
import { vocabulary } from "./vocabulary.ts";

export interface ServiceContext {
  readonly host: SourceHost;
  readonly grammar: Grammar;
  /** What the host's folder `.` is really called, as the order of a sketch's files hangs on it; empty for unknown. */
  readonly startName: string;
}

const nothing: CheckResult = { findings: [], notUnderstood: [], settingsFaults: [], files: [], checked: [] };

const noProject = { kind: "cannot", message: "there is no such project" } as const;

/** The service over the files of `host`. It keeps what it has read, and reads again what the host says anew. */
export function createService({ host, grammar, startName }: ServiceContext): Service {
  const states = new Map<string, ProjectState>();
  const keep = (id: string, project: Project): ProjectEntry => {
    const known = states.get(id);
    if (known === undefined)
      states.set(id, new ProjectState(host, new ProjectReader(host, grammar), project));
    else known.replace(project);
    return {
      id,
      root: project.root,
      configured: project.settings.file !== undefined,
      units: project.units.length,
    };
  };
  return {
    projectsAt: (path) =>
      findProjects(host, path, { vocabulary, startName }).map((project) =>
        keep(idOf(project, path), project),
      ),
    forget: (id) => void states.delete(id),
    check: (id) => {
      const state = states.get(id);
      return state === undefined ? nothing : state.result();
    },
    tryOut: (id, cancelled) => states.get(id)?.tried(cancelled),
    runWhole: (id, cancelled) => states.get(id)?.ran(cancelled),
    choose: (id, choices) => states.get(id)?.choose(choices),
    takeOver: (id, tried) => states.get(id)?.takeOver(tried),
    simulate: (id, choice) => {
      const state = states.get(id);
      return state === undefined ? noProject : simulateReading(state.reading(), choice);
    },
    runChoices: (id) => {
      const state = states.get(id);
      return state && runChoices(state.project);
    },
    planMatrix: (id, choice) => {
      const state = states.get(id);
      return state === undefined ? noProject : planMatrix(state.reading(), choice);
    },
    runCell: (id, choice) => {
      const state = states.get(id);
      if (state !== undefined) return runCell(state.reading(), choice);
      const { mouse, pc, strokes } = choice;
      return { mouse, pc, outcomes: strokes.map((stroke) => ({ ...noProject, stroke })) };
    },
    notes: (id) => {
      const state = states.get(id);
      if (state === undefined) return { proposals: [], untold: [] };
      state.tried(undefined);
      return proposedOf(state);
    },
    hover: (id, file, offset) => {
      const state = states.get(id);
      return state && hoverAt(state.reading(), file, offset, host.readText(file) ?? "", state.known());
    },
    inlayHints: (id, file, from, to) => {
      const state = states.get(id);
      if (state === undefined) return [];
      return inlayHints(state.reading().facts, file, host.readText(file) ?? "", from, to);
    },
    lenses: (id, file) => {
      const state = states.get(id);
      if (state === undefined) return [];
      return lensesOf(state.reading(), file, { now: state.known(), before: state.before() });
    },
    lineValues: (id, subject) => {
      const state = states.get(id);
      return state === undefined ? noProject : lineValuesOf(state.reading(), subject, state.known());
    },
    movementsFor: (id, layout) => {
      const state = states.get(id);
      return state === undefined ? [] : movementsFor(state.reading().project.settings, layout);
    },
    complete: (id, file, offset) => {
      const state = states.get(id);
      return state === undefined ? [] : completeAt(state.reading(), file, offset, host.readText(file) ?? "");
    },
    actions: (id, span) => {
      const state = states.get(id);
      if (state === undefined) return [];
      const textOf = (file: string) => host.readText(file) ?? "";
      return [
        ...actionsAt(state.result(), span, textOf(span.file)),
        ...noteActionsAt(proposedOf(state), span, textOf),
      ];
    },
  };
}

/** A project is known by its root; a part of one that was asked for by itself is known by what was asked for. */
function idOf({ root }: Project, path: string): string {
  const asked = path.replace(/\/+$/, "");
  const isWhole = asked === "" || asked === "." || root === asked || root.startsWith(`${asked}/`);
  return isWhole ? root : asked;
}

/** Notes about what was read, and about encoders as far as those were looked for. */
function proposedOf(state: ProjectState): ProposedNotes {
  return proposeNotes(state.reading().facts, state.known()?.proposals ?? []);
}
