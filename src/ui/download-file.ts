/** Hands a file to the browser to be saved under this name. */
export function downloadFile(content: string | Uint8Array<ArrayBuffer> | Blob, fileName: string, type: string): void {
  const address = URL.createObjectURL(new Blob([content], { type }));
  const link = document.createElement('a');
  link.href = address;
  link.download = fileName;
  link.click();
  // The browser has taken the file over once the click was dealt with.
  setTimeout(() => {
    URL.revokeObjectURL(address);
  }, 10_000);
}
