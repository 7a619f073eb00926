import type { AnswerTo, Asked, Question, Reply } from "./answers.ts";
import { elements, type PageData } from "./page-data.ts";

/** Asks the core. The promise fails where the core does. */
export type Ask = <Q extends Question>(question: Q, asked: Asked<Q>) => Promise<AnswerTo<Q>>;

/** Starts the core beside the page at the first question, so that no key waits for it. */
export function askBeside(data: PageData): Ask {
  const open = new Set<() => void>();
  let core: Promise<void> | undefined;
  let post: ((message: unknown, port: MessagePort) => void) | undefined;
  const inPage = (text: string): void => {
    const script = document.createElement("script");
    script.textContent = text;
    document.head.append(script);
    post = (message, port) => window.postMessage(message, { transfer: [port] });
  };
  const start = (text: string): void => {
    try {
      const worker = new Worker(URL.createObjectURL(new Blob([text], { type: "text/javascript" })));
      post = (message, port) => worker.postMessage(message, [port]);
      // The core tells of its own faults, so the worker has not started.
      worker.onerror = () => {
        inPage(text);
        for (const again of open) again();
      };
    } catch {
      inPage(text);
    }
  };
  return <Q extends Question>(question: Q, asked: Asked<Q>) =>
    new Promise<AnswerTo<Q>>((resolve, reject) => {
      const send = (): void => {
        const { port1, port2 } = new MessageChannel();
        port1.onmessage = ({ data: reply }: MessageEvent<Reply<Q>>) => {
          open.delete(send);
          if (reply.ok) resolve(reply.answer);
          else reject(new Error(reply.fault));
        };
        post?.({ data, question, asked }, port2);
      };
      open.add(send);
      core ??= coreText().then(start);
      core.then(send).catch(reject);
    });
}

/** The text of the core, which the page carries compressed. */
function coreText(): Promise<string> {
  const packed = document.getElementById(elements.core)?.textContent ?? "";
  const letters = atob(packed);
  const bytes = new Uint8Array(letters.length);
  for (let index = 0; index < letters.length; index += 1) bytes[index] = letters.charCodeAt(index);
  return new Response(new Blob([bytes]).stream().pipeThrough(new DecompressionStream("deflate"))).text();
}
