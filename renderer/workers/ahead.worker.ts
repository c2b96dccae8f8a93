/** Runs beside the window: the advice is on the sheet at once, what the best plan costs in the end takes a little longer. */
import { lookFrom, type AheadRequest } from './ahead-request.ts';

addEventListener('message', ({ data }: MessageEvent<AheadRequest>) => {
  postMessage(lookFrom(data));
});
