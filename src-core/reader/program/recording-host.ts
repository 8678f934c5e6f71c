import type { SourceHost } from "../source-host.ts";

/** What a unit's reading asked of the host: as long as the answers stay, so does the unit. */
export interface HostJournal {
  readonly texts: ReadonlyMap<string, string | undefined>;
  readonly folders: ReadonlyMap<string, readonly string[]>;
}

export interface RecordingHost extends SourceHost {
  readonly journal: HostJournal;
}

/** Hands through to a host and remembers which files and folders were asked for and what they held. */
export function recordingHost(host: SourceHost): RecordingHost {
  const texts = new Map<string, string | undefined>();
  const folders = new Map<string, readonly string[]>();
  return {
    journal: { texts, folders },
    ignoresCase: host.ignoresCase === true,
    readText(path) {
      const text = host.readText(path);
      texts.set(path, text);
      return text;
    },
    listFolder(path) {
      const names = host.listFolder(path);
      folders.set(path, names);
      return names;
    },
  };
}

/** Whether the host would answer today as it did then. */
export function stillAnswers(host: SourceHost, journal: HostJournal): boolean {
  for (const [path, text] of journal.texts) if (host.readText(path) !== text) return false;
  for (const [path, names] of journal.folders) if (!isSame(host.listFolder(path), names)) return false;
  return true;
}

function isSame(some: readonly string[], others: readonly string[]): boolean {
  return some === others || (some.length === others.length && some.every((name, at) => name === others[at]));
}
