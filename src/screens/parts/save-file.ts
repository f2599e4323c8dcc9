/** Hands a text, or a file made before, over as a file: the browser saves it where it saves all that is downloaded. */
export function saveFile(name: string, content: string | Blob, type: string): void {
  const url = URL.createObjectURL(new Blob([content], { type }));
  Object.assign(document.createElement('a'), { href: url, download: name }).click();
  // The browser has the file by the next turn of its loop; the address is not needed after that.
  setTimeout(() => URL.revokeObjectURL(url), 1000);
}
