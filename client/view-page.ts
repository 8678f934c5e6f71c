import { Uri, type Webview } from "vscode";

export type ViewName = "ribbon" | "matrix";

/** Where the programs and styles of views are. */
export function viewFolder(extension: Uri): Uri {
  return Uri.joinPath(extension, "dist", "views");
}

/** A page that runs one program and loads one style sheet, both of the extension, and nothing else from anywhere. */
export function viewPage(webview: Webview, extension: Uri, view: ViewName, title: string): string {
  const file = (name: string): string =>
    webview.asWebviewUri(Uri.joinPath(viewFolder(extension), name)).toString();
  const nonce = newNonce();
  const policy = `default-src 'none'; style-src ${webview.cspSource}; script-src 'nonce-${nonce}'`;
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<title>${title}</title>
<link rel="stylesheet" href="${file(`${view}.css`)}">
</head>
<body>
<main id="view"></main>
<script nonce="${nonce}" src="${file(`${view}.js`)}"></script>
</body>
</html>`;
}

/** 128 bits that nobody can guess. */
function newNonce(): string {
  return crypto.randomUUID().replaceAll("-", "");
}
