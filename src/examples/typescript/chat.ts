// A chat helper: each message on the input (it ends at an empty line) gets a reply ready to post.
// What was said earlier is kept here, not on the server, and is sent with the next message.
import { createInterface } from "node:readline";
import { easewright, told, type Schemas } from "./easewright.js";

const service = easewright(process.argv[2] ?? "http://localhost:8080");
let earlier: Schemas["Fitting"] = {};

for await (const text of messages()) {
  const body: Schemas["Fitting"] = { ...earlier, text };
  const answer = await service.POST("/v1/fittings", { body });
  if (answer.error !== undefined) {
    console.log(told(answer.error));
    continue; // the next message continues from what was understood before
  }
  const reply = await service.POST("/v1/fittings", {
    body,
    headers: { Accept: "text/markdown" },
    parseAs: "text",
  });
  console.log(reply.error === undefined ? reply.data : told(reply.error));

  // The question the reply ends with: "yes" or "no" in the next message answers it.
  const [question] = answer.data.questions;
  earlier = { ...answer.data.soFar, ...(question && { asked: question.sign }) };
}

async function* messages(): AsyncGenerator<string> {
  let lines: string[] = [];
  for await (const line of createInterface({ input: process.stdin })) {
    if (line.trim() !== "") {
      lines.push(line);
    } else if (lines.length > 0) {
      yield lines.join("\n");
      lines = [];
    }
  }
  if (lines.length > 0) {
    yield lines.join("\n");
  }
}
