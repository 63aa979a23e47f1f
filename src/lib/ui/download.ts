/** How long a download may take to begin before its content is let go, ms. Source: common practice. */
const BEGUN_MS = 60_000;

/** Hands content to the reader as a file of that name. */
export function download(name: string, type: string, content: string | Uint8Array): void {
  const part = typeof content === 'string' ? content : new Uint8Array(content);
  const url = URL.createObjectURL(new Blob([part], { type }));
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), BEGUN_MS);
}
