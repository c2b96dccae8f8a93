/**
 * Which way is up, 1 … 8, from an Exif block; 1 where it does not say.
 *
 * @param tiff  from the byte-order mark on, without the "Exif" that JPEG puts in front.
 * @source Exif 2.3 (CIPA DC-008), section 4.6.4: tag 274, type SHORT, in IFD0 (memory).
 */
export function orientationIn(tiff: Buffer): number {
  const order = tiff.toString('latin1', 0, 2);
  if (tiff.length < 8 || (order !== 'II' && order !== 'MM')) return 1;
  const little = order === 'II';
  const u16 = (at: number): number => (little ? tiff.readUInt16LE(at) : tiff.readUInt16BE(at));
  const u32 = (at: number): number => (little ? tiff.readUInt32LE(at) : tiff.readUInt32BE(at));
  const first = u32(4);
  if (u16(2) !== 42 || first + 2 > tiff.length) return 1;
  const entries = u16(first);
  for (let i = 0; i < entries; i++) {
    const at = first + 2 + 12 * i;
    if (at + 12 > tiff.length) return 1;
    if (u16(at) !== ORIENTATION || u16(at + 2) !== SHORT) continue;
    const value = u16(at + 8);
    return value >= 1 && value <= 8 ? value : 1;
  }
  return 1;
}

const ORIENTATION = 274;
const SHORT = 3;

/** An Exif block that says which way is up and nothing else. */
export function orientationOnly(orientation: number): Buffer {
  const tiff = Buffer.alloc(26);
  tiff.write('MM', 0, 'latin1');
  tiff.writeUInt16BE(42, 2);
  tiff.writeUInt32BE(8, 4);
  tiff.writeUInt16BE(1, 8);
  tiff.writeUInt16BE(ORIENTATION, 10);
  tiff.writeUInt16BE(SHORT, 12);
  tiff.writeUInt32BE(1, 14);
  tiff.writeUInt16BE(orientation, 18);
  return tiff;
}
