// A chat helper: each message on the input (they end at an empty line) gets a reply ready to post.
// What was told earlier lives here, not on the server, and goes along with the next message.
import { createInterface } from "node:readline";
import { easewright, told, type Schemas } from "./easewright.js";

const service = easewright(process.argv[2] ?? "http://localhost:8080");

for await (const message of messages()) {
  const fitting: Schemas["Fitting"] = JSON.parse(message);
  const reply = await service.POST("/v1/fittings", {
    body: fitting,
    headers: { Accept: "text/markdown" },
    parseAs: "text",
  });
  console.log(reply.error === undefined ? reply.data : told(reply.error));
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
