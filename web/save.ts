/** Files handed to the reader; made in the page, sent nowhere. */
export function saveText(name: string, text: string, type: string): void {
  saveBlob(name, new Blob([text], { type: `${type};charset=utf-8` }));
}

export function saveBlob(name: string, blob: Blob): void {
  const url = URL.createObjectURL(blob);
  saveUrl(name, url);
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
}

export function saveUrl(name: string, url: string): void {
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
}
