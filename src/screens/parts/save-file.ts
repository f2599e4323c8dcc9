/** Hands a text over as a file, made in this page: the browser saves it where it saves all that is downloaded. */
export function saveFile(name: string, text: string, type: string): void {
  const url = URL.createObjectURL(new Blob([text], { type }));
  Object.assign(document.createElement('a'), { href: url, download: name }).click();
  // The browser has the file by the next turn of its loop; the address is not needed after that.
  setTimeout(() => URL.revokeObjectURL(url), 1000);
}
