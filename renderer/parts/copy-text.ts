/**
 * Puts a text on the clipboard. Not every window may write there by itself; then the page's own copy command is used,
 * which needs only the press that led here.
 *
 * @returns false when neither way was open.
 */
export async function copyText(text: string): Promise<boolean> {
  try {
    await navigator.clipboard.writeText(text);
    return true;
  } catch (problem) {
    if (!(problem instanceof DOMException || problem instanceof TypeError)) throw problem;
    const area = document.createElement('textarea');
    area.value = text;
    area.className = 'vh';
    document.body.append(area);
    area.select();
    // eslint-disable-next-line @typescript-eslint/no-deprecated -- old, and the only way that asks for no permission
    const done = document.execCommand('copy');
    area.remove();
    return done;
  }
}
