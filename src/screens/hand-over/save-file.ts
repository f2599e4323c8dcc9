/** Hands a text over as a file, made in this page. */
export function saveFile(name: string, text: string, type: string): void {
  const url = URL.createObjectURL(new Blob([text], { type }));
  const link = Object.assign(document.createElement('a'), { href: url, download: name });
  link.click();
  // The browser has the file by the next turn of its loop; the address is not needed after that.
  setTimeout(() => URL.revokeObjectURL(url), 1000);
}
