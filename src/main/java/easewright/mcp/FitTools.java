package easewright.mcp;

import com.fasterxml.jackson.databind.JsonNode;
import easewright.answering.CheckService;
import easewright.answering.CutPlanService;
import easewright.answering.FittingService;
import easewright.request.SoFar;
import easewright.saying.AnswerJson;
import easewright.saying.CheckPages;
import easewright.saying.CutPlanPages;
import easewright.saying.Detail;
import easewright.saying.ReplyWriter;
import io.quarkiverse.mcp.server.RawMessage;
import io.quarkiverse.mcp.server.Tool;
import io.quarkiverse.mcp.server.ToolResponse;
import jakarta.inject.Singleton;

/**
 * The tools for assistants. A tool is named after the contract's operation ({@code answer_fitting}
 * is {@code answerFitting}) and takes that operation's request as its arguments; these are read
 * from the raw message, so that faults are reported alike.
 */
@Singleton
public class FitTools {
  private final FittingService fittings;
  private final CheckService checks;
  private final CutPlanService plans;
  private final ReplyWriter replies;
  private final AnswerJson json;
  private final CalledAs called;

  FitTools(
      FittingService fittings,
      CheckService checks,
      CutPlanService plans,
      ReplyWriter replies,
      AnswerJson json,
      CalledAs called) {
    this.fittings = fittings;
    this.checks = checks;
    this.plans = plans;
    this.replies = replies;
    this.json = json;
    this.called = called;
  }

  @Tool(
      name = "answer_fitting",
      title = "Answer a fitting",
      description =
          "Says what to change on a home-sewn sports top or soft bra after a try-on: a reply to post,"
              + " the likeliest causes, one change with amount, place and check, and what to ask"
              + " next. Send the post as text. Cautions come first: pass them on unchanged, and"
              + " advise nothing tighter where one stops that. Nothing is stored; send soFar back to go on.",
      annotations =
          @Tool.Annotations(
              readOnlyHint = true,
              destructiveHint = false,
              idempotentHint = true,
              openWorldHint = false),
      inputSchema = @Tool.InputSchema(generator = ArgumentSchema.class))
  ToolResponse answerFitting(RawMessage message) {
    return ToolReply.to(
        message,
        arguments -> Turn.of(arguments, fittings::answer),
        turn ->
            ToolReply.Pages.turn(
                    replies.markdown(turn.answer(), turn.length(), called.beforeThePath()).strip(),
                    turn.answer().questions().stream().findFirst().orElse(null),
                    String.valueOf(SoFar.lean(turn.answer().soFar())))
                .render(),
        turn -> lean(turn.answer()));
  }

  @Tool(
      name = "read_post",
      title = "Read a post",
      description =
          "Says what a post tells, each thing with the words it was read from, what was not"
              + " understood, and whether it is a fit question at all. Answers nothing.",
      annotations =
          @Tool.Annotations(
              readOnlyHint = true,
              destructiveHint = false,
              idempotentHint = true,
              openWorldHint = false),
      inputSchema = @Tool.InputSchema(generator = ArgumentSchema.class))
  ToolResponse readPost(RawMessage message) {
    return ToolReply.to(message, fittings::read, read -> ToolReply.Pages.reading(read).render());
  }

  @Tool(
      name = "check_size",
      title = "Check the size",
      description =
          "Says which size to cut, how sure that is given how tapes err, and what a bra label may"
              + " mean. Takes bust and underbust, or a label, and the pattern if known.",
      annotations =
          @Tool.Annotations(
              readOnlyHint = true,
              destructiveHint = false,
              idempotentHint = true,
              openWorldHint = false),
      inputSchema = @Tool.InputSchema(generator = ArgumentSchema.class))
  ToolResponse checkSize(RawMessage message) {
    return ToolReply.to(
        message, checks::size, answer -> CheckPages.sizePost(answer).render(), this::lean);
  }

  @Tool(
      name = "check_cloth",
      title = "Check cloth and elastic",
      description =
          "Says what a stretch cloth or a band elastic is fit for and how to lay or cut it. Takes"
              + " tests done at home with a ruler, and the pattern if known.",
      annotations =
          @Tool.Annotations(
              readOnlyHint = true,
              destructiveHint = false,
              idempotentHint = true,
              openWorldHint = false),
      inputSchema = @Tool.InputSchema(generator = ArgumentSchema.class))
  ToolResponse checkCloth(RawMessage message) {
    return ToolReply.to(
        message, checks::cloth, answer -> CheckPages.clothPost(answer).render(), this::lean);
  }

  @Tool(
      name = "plan_cut",
      title = "Plan the cutting",
      description =
          "Plans what to cut, how to lay it, how much to buy and what to sew first. Takes a pattern sheet, a size or"
              + " two, choices and cloth widths; after a fitting also the changes accepted, and then"
              + " lists only what is to be cut anew.",
      annotations =
          @Tool.Annotations(
              readOnlyHint = true,
              destructiveHint = false,
              idempotentHint = true,
              openWorldHint = false),
      inputSchema = @Tool.InputSchema(generator = ArgumentSchema.class))
  ToolResponse planCut(RawMessage message) {
    return ToolReply.to(message, plans::plan, plan -> CutPlanPages.list(plan).render(), this::lean);
  }

  private JsonNode lean(Object answer) {
    return json.tree(answer, Detail.LEAN);
  }
}
