/** Longest side of a photo in a report, points: fills a page's width at 150 to the inch. */
const LONGEST = 1280;
const QUALITY = 0.82;

/**
 * A stored photo as a smaller copy, turned upright, for the report; null when it cannot be drawn.
 *
 * @param data  base64.
 * @returns a data: address of a JPEG at most 1280 points long and wide. A smaller photo is not made larger.
 */
export async function photoCopy(type: string, data: string): Promise<string | null> {
  const bytes = Uint8Array.from(atob(data), (sign) => sign.charCodeAt(0));
  let picture: ImageBitmap;
  try {
    picture = await createImageBitmap(new Blob([bytes], { type }), { imageOrientation: 'from-image' });
  } catch (problem) {
    if (problem instanceof DOMException) return null;
    throw problem;
  }
  const scale = Math.min(1, LONGEST / Math.max(picture.width, picture.height));
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(picture.width * scale));
  canvas.height = Math.max(1, Math.round(picture.height * scale));
  const pen = canvas.getContext('2d');
  if (!pen) return null;
  // JPEG has no transparency: what shows through is paper.
  pen.fillStyle = '#fff';
  pen.fillRect(0, 0, canvas.width, canvas.height);
  pen.drawImage(picture, 0, 0, canvas.width, canvas.height);
  picture.close();
  return canvas.toDataURL('image/jpeg', QUALITY);
}
