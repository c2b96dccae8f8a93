/** Runs beside the window: drawing up a tree takes seconds, and nobody should wait for it with a still screen. */
import { drawUp, type CompileRequest } from './compile-request.ts';

addEventListener('message', ({ data }: MessageEvent<CompileRequest>) => {
  drawUp(data, (news) => postMessage(news));
});
