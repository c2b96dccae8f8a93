/** Why a file is no photo that can be kept: a sentence for the person, without the name of the file. */
export class PhotoFault extends Error {
  constructor(message: string) {
    super(message);
    this.name = 'PhotoFault';
  }
}

/** A photo as it is stored: pixels, colours and which way is up; nothing about place, time, person or camera. */
export interface CleanPhoto {
  readonly bytes: Buffer;
  /** As stored, before it is turned upright. */
  readonly width: number;
  readonly height: number;
}
