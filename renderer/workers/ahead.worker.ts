/** Runs beside the window: the first answer is on the sheet at once, the better one takes a little longer. */
import { lookFrom, type AheadRequest } from './ahead-request.ts';

addEventListener('message', ({ data }: MessageEvent<AheadRequest>) => {
  postMessage(lookFrom(data));
});
