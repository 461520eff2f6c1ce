/** Files handed to the reader; made in the page, sent nowhere. */
export function saveText(name: string, text: string, type: string): void {
  const url = URL.createObjectURL(new Blob([text], { type: `${type};charset=utf-8` }));
  saveUrl(name, url);
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
}

export function saveUrl(name: string, url: string): void {
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
}
