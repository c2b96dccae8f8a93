/**
 * End of the window's address while the page of recordings asks for the microphone, from the press of its button until the
 * recording has ended. The desktop window grants sound under it and under nothing else.
 */
export const MICROPHONE_MARK = '#microphone';
