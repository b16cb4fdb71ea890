// A client whose types come from the contract, and good manners towards a busy service.
import createClient from "openapi-fetch";
import { setTimeout as pause } from "node:timers/promises";
import type { components, paths } from "./generated/contract.js";

export type Schemas = components["schemas"];

const TRIES = 4;
const LONGEST_WAIT_SECONDS = 30;

/** Answers are typed as JSON; one asked for as text is a string. */
type Forms = "application/json" | "application/problem+json";

export function easewright(address: string) {
  return createClient<paths, Forms>({ baseUrl: address, fetch: patiently });
}

/** Tries again after 429 and 503, when the service says it will be ready, but not for ever. */
async function patiently(request: Request): Promise<Response> {
  for (let tries = 1; ; tries++) {
    // A request's body can be read once, so every try sends a copy.
    const response = await fetch(request.clone());
    const busy = response.status === 429 || response.status === 503;
    const seconds = busy ? secondsToWait(response.headers.get("Retry-After")) : 0;
    if (!busy || tries === TRIES || seconds > LONGEST_WAIT_SECONDS) {
      return response;
    }
    await response.body?.cancel();
    console.error(`Busy; trying again in ${seconds} s.`);
    await pause(seconds * 1000);
  }
}

/** Retry-After is either seconds or a date (RFC 9110, section 10.2.3). */
function secondsToWait(retryAfter: string | null): number {
  if (retryAfter === null) {
    return 1;
  }
  const seconds = Number(retryAfter);
  const wait = Number.isNaN(seconds) ? (Date.parse(retryAfter) - Date.now()) / 1000 : seconds;
  return Number.isNaN(wait) ? 1 : Math.max(0, Math.ceil(wait));
}

/** A problem (RFC 9457) as lines to show: what is wrong, then each fault's field and remedy. */
export function told(problem: Schemas["Problem"]): string {
  const faults = (problem.faults ?? []).map(
    (fault) => `  ${fault.pointer ? `${fault.pointer}: ` : ""}${fault.problem} ${fault.remedy}`,
  );
  return [`${problem.title}. ${problem.detail}`, ...faults].join("\n");
}

/** What was answered; where there is a problem instead, the program tells it and ends. */
export function answered<T>(result: {
  data?: T | undefined;
  error?: Schemas["Problem"] | undefined;
}): T {
  if (result.data === undefined) {
    console.error(result.error ? told(result.error) : "There was no answer.");
    process.exit(1);
  }
  return result.data;
}
