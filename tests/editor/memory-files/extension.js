const { EventEmitter, FileChangeType, FileSystemError, FileType, workspace } = require("vscode");

const root = "/firmware";

/** Files of the setting `memoryFiles.files` at `memory:/firmware`; folders are there where files are. */
class MemoryFiles {
  #changed = new EventEmitter();
  #files = new Map();
  onDidChangeFile = this.#changed.event;

  constructor(texts) {
    for (const [name, text] of Object.entries(texts)) {
      this.#files.set(`${root}/${name}`, new TextEncoder().encode(text));
    }
  }

  watch() {
    return { dispose() {} };
  }

  stat(uri) {
    const file = this.#files.get(uri.path);
    const isFolder = [root, "/"].includes(uri.path) || this.readDirectory(uri).length > 0;
    if (file === undefined && !isFolder) throw FileSystemError.FileNotFound(uri);
    return { type: file ? FileType.File : FileType.Directory, ctime: 0, mtime: 0, size: file?.length ?? 0 };
  }

  readDirectory({ path }) {
    const prefix = `${path.replace(/\/$/, "")}/`;
    const rests = [...this.#files.keys()].filter((file) => file.startsWith(prefix));
    const entries = rests.map((file) => file.slice(prefix.length).split("/"));
    return [
      ...new Map(
        entries.map(([name, below]) => [name, below === undefined ? FileType.File : FileType.Directory]),
      ),
    ];
  }

  readFile(uri) {
    const file = this.#files.get(uri.path);
    if (file === undefined) throw FileSystemError.FileNotFound(uri);
    return file;
  }

  writeFile(uri, content) {
    const type = this.#files.has(uri.path) ? FileChangeType.Changed : FileChangeType.Created;
    this.#files.set(uri.path, content);
    this.#changed.fire([{ type, uri }]);
  }

  delete(uri) {
    this.#files.delete(uri.path);
    this.#changed.fire([{ type: FileChangeType.Deleted, uri }]);
  }

  createDirectory() {}

  rename(uri) {
    throw FileSystemError.NoPermissions(uri);
  }
}

exports.activate = ({ subscriptions }) => {
  const texts = workspace.getConfiguration("memoryFiles").get("files");
  subscriptions.push(
    workspace.registerFileSystemProvider("memory", new MemoryFiles(texts), { isCaseSensitive: true }),
  );
};
