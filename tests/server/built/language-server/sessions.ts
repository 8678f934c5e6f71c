import { afterEach } from "vitest";
import { ScratchFolder } from "../scratch-folder.ts";
import { Session } from "./session.ts";

const sessions: Session[] = [];

afterEach(() => {
  for (const session of sessions.splice(0)) {
    session.kill();
    session.folder.remove();
  }
});

/** A session over a folder of these files, both of which end with the test. */
export async function sessionOver(
  files: Readonly<Record<string, string>>,
  initializationOptions: object = {},
): Promise<Session> {
  const session = followSession(new Session(new ScratchFolder(files)));
  await session.start(initializationOptions);
  return session;
}

/** The same session, which ends with the test. */
export function followSession(session: Session): Session {
  sessions.push(session);
  return session;
}
