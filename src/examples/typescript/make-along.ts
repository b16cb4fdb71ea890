// One garment from tape to toile: which size to cut, what to buy for it, and, after the try-on of
// a toile cut by the label on another bra, what to change.
import { answered, easewright, type Schemas } from "./easewright.js";

const service = easewright(process.argv[2] ?? "http://localhost:8080");
const body: Schemas["Body"] = { bust: "36 3/4 in", underbust: "30 1/4 in" };
const pattern: Schemas["PatternChoice"] = { sheet: "quillmere-top" };
const percent = (fraction: number) => `${Math.round(100 * fraction)} %`;

const check = answered(
  await service.POST("/v1/size-checks", { body: { body, measuredBy: "tape-self", pattern } }),
);
const size = check.take?.size;
if (size === undefined) {
  console.error("These measurements are on no size of the pattern.");
  process.exit(1);
}
console.log(`Size to cut: ${size}. ${check.take?.because}`);

const plan = answered(
  await service.POST("/v1/cut-plans", {
    body: {
      pattern,
      size,
      cloths: {
        main: { width: "150 cm", stretch: "crosswise", shrinkage: "4 %" },
        lining: { width: "140 cm", stretch: "crosswise" },
        support: { width: "140 cm", stretch: "crosswise", shrinkage: "0 %" },
      },
    },
  }),
);
for (const cloth of plan.buy) {
  console.log(`To buy: ${cloth.buy.text} of ${cloth.name}.`);
}

const fitting: Schemas["Fitting"] = {
  body,
  measuredBy: "tape-self",
  pattern,
  sizeCut: "80C",
  signs: [
    { sign: "band-rides-up-at-the-back", place: "back", degree: "clear" },
    { sign: "band-pulls-off-the-body", amount: "2 in" },
    { sign: "straps-dig-in", seen: "absent" },
  ],
};
const answer = answered(await service.POST("/v1/fittings", { body: fitting }));
for (const caution of answer.cautions) {
  console.log(`Caution: ${caution.says} Ask: ${caution.who}.`);
}
for (const cause of answer.causes) {
  console.log(`Likely: ${cause.name} (${percent(cause.probability)})`);
}
const [first] = answer.adjustments;
if (answer.clear && first !== undefined) {
  console.log(`Change: ${first.does}`);
}
for (const question of answer.questions) {
  console.log(`Look next: ${question.ask}`);
}
