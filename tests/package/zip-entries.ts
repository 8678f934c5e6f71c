/**
 * Names in the central directory of a ZIP archive. Layout: APPNOTE.TXT, .ZIP File Format Specification, 4.3.12
 * (central directory header) and 4.3.16 (end of central directory record).
 */
export function entriesOfZip(archive: Buffer): readonly string[] {
  const end = archive.lastIndexOf(Buffer.from("PK\u0005\u0006", "latin1"));
  if (end < 0) throw new Error("no end of central directory: this is no ZIP archive");
  const count = archive.readUInt16LE(end + 10);
  let at = archive.readUInt32LE(end + 16);
  const names: string[] = [];
  for (let index = 0; index < count; index++) {
    const nameLength = archive.readUInt16LE(at + 28);
    const extraLength = archive.readUInt16LE(at + 30);
    const commentLength = archive.readUInt16LE(at + 32);
    names.push(archive.toString("utf8", at + 46, at + 46 + nameLength));
    at += 46 + nameLength + extraLength + commentLength;
  }
  return names;
}
