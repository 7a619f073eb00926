import type { Report } from "@noodlewright/core";
import { type ExitStatus, exit, type Io } from "../io.ts";
import { printReport } from "./answer.ts";
import type { Asked } from "./command.ts";

/** Prints a report that tells the nearest answer where there is none to the question: the status says so. */
export async function printNearest(report: Report, found: boolean, asked: Asked, io: Io): Promise<ExitStatus> {
  const status = await printReport(report, asked, io);
  return status === exit.done && !found ? exit.noAnswer : status;
}
