import type { Question, Request } from "./answers.ts";
import { type Desk, openDesk } from "./desk.ts";
import type { PageData } from "./page-data.ts";

// The core beside the page: it answers each message at the port that came with it, in a worker, or in the page itself
// where a browser has none.

let desk: Desk | undefined;

function answerTo<Q extends Question>(desk: Desk, { question, asked }: Request<Q>) {
  return desk[question](asked);
}

addEventListener("message", ({ data, ports: [port] }: MessageEvent<Request & { readonly data: PageData }>) => {
  if (port === undefined) return;
  try {
    desk ??= openDesk(data.data);
    port.postMessage({ ok: true, answer: answerTo(desk, data) });
  } catch (fault) {
    port.postMessage({ ok: false, fault: String(fault) });
  }
});
