/** Hands a text to the person as a file of that name; the browser or the desktop asks where it goes. */
export function saveFile(name: string, text: string, type = 'text/plain'): void {
  const address = URL.createObjectURL(new Blob([text], { type: `${type};charset=utf-8` }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  URL.revokeObjectURL(address);
}
