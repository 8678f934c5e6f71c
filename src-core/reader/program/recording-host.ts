import type { SourceHost } from "../source-host.ts";

/** What a unit's reading asked of the host: as long as the answers stay, so does the unit. */
export interface HostJournal {
  readonly texts: ReadonlyMap<string, string | undefined>;
}

export interface RecordingHost extends SourceHost {
  readonly journal: HostJournal;
}

/** Hands through to a host and remembers which files were asked for and what they held. */
export function recordingHost(host: SourceHost): RecordingHost {
  const texts = new Map<string, string | undefined>();
  return {
    journal: { texts },
    readText(path) {
      const text = host.readText(path);
      texts.set(path, text);
      return text;
    },
    listFolder: (path) => host.listFolder(path),
  };
}

/** Whether the host would answer today as it did then. */
export function stillAnswers(host: SourceHost, journal: HostJournal): boolean {
  for (const [path, text] of journal.texts) if (host.readText(path) !== text) return false;
  return true;
}
