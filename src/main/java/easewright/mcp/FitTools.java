package easewright.mcp;

import easewright.answering.CheckService;
import easewright.answering.CutPlanService;
import easewright.answering.FittingService;
import easewright.saying.CheckPages;
import easewright.saying.CutPlanPages;
import easewright.saying.ReplyLength;
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
  private final CalledAs called;

  FitTools(
      FittingService fittings,
      CheckService checks,
      CutPlanService plans,
      ReplyWriter replies,
      CalledAs called) {
    this.fittings = fittings;
    this.checks = checks;
    this.plans = plans;
    this.replies = replies;
    this.called = called;
  }

  @Tool(
      name = "answer_fitting",
      title = "Answer a fitting",
      description =
          "Says what to change on a home-sewn sports top or soft bra after a try-on. Takes a post in"
              + " plain English as text, or what was seen and what was looked for and not seen, measurements, size cut, pattern and"
              + " cloth tests, as far as known; one sign is enough. Gives the likeliest causes, one"
              + " change with its amount, place and check, and what to ask next. Cautions come"
              + " first: pass them on unchanged and advise nothing tighter where one stops that."
              + " Nothing is kept.",
      annotations =
          @Tool.Annotations(
              readOnlyHint = true,
              destructiveHint = false,
              idempotentHint = true,
              openWorldHint = false),
      inputSchema = @Tool.InputSchema(generator = ContractSchema.class))
  ToolResponse answerFitting(RawMessage message) {
    return ToolReply.to(
        message,
        fittings::answer,
        answer -> replies.markdown(answer, ReplyLength.LONG, called.beforeThePath()));
  }

  @Tool(
      name = "read_post",
      title = "Read a post",
      description =
          "Says what a post or message about the fit, in anyone's plain English, tells: signs seen"
              + " and denied, measurements, size, cloth, earlier changes; each with the words it was"
              + " read from, and what was not understood. Answers nothing: answer_fitting takes the"
              + " text itself as well. Use it to check the reading before, or to find out whether a"
              + " post is a fit question at all.",
      annotations =
          @Tool.Annotations(
              readOnlyHint = true,
              destructiveHint = false,
              idempotentHint = true,
              openWorldHint = false),
      inputSchema = @Tool.InputSchema(generator = ContractSchema.class))
  ToolResponse readPost(RawMessage message) {
    return ToolReply.to(message, fittings::read, read -> ToolReply.Pages.reading(read).render());
  }

  @Tool(
      name = "check_size",
      title = "Check the size",
      description =
          "Says which size to cut before anything is cut, how sure that is given how tapes err, and"
              + " what a bra label may mean in each region. Takes bust and underbust, or a label,"
              + " and the pattern if known.",
      annotations =
          @Tool.Annotations(
              readOnlyHint = true,
              destructiveHint = false,
              idempotentHint = true,
              openWorldHint = false),
      inputSchema = @Tool.InputSchema(generator = ContractSchema.class))
  ToolResponse checkSize(RawMessage message) {
    return ToolReply.to(message, checks::size, answer -> CheckPages.sizePost(answer).render());
  }

  @Tool(
      name = "check_cloth",
      title = "Check cloth and elastic",
      description =
          "Says what a stretch cloth or a band elastic is fit for and how to lay or cut it. Takes"
              + " stretch tests done at home with a ruler, or an elastic drawn out by a known weight,"
              + " and the pattern if known.",
      annotations =
          @Tool.Annotations(
              readOnlyHint = true,
              destructiveHint = false,
              idempotentHint = true,
              openWorldHint = false),
      inputSchema = @Tool.InputSchema(generator = ContractSchema.class))
  ToolResponse checkCloth(RawMessage message) {
    return ToolReply.to(message, checks::cloth, answer -> CheckPages.clothPost(answer).render());
  }

  @Tool(
      name = "plan_cut",
      title = "Plan the cutting",
      description =
          "Plans what to cut, how to lay it on the cloths, how much to buy, and what to sew in which"
              + " order. Takes a pattern sheet, a size or two, choices and cloth widths; after a"
              + " fitting also the changes made, and then lists only what is to be cut anew.",
      annotations =
          @Tool.Annotations(
              readOnlyHint = true,
              destructiveHint = false,
              idempotentHint = true,
              openWorldHint = false),
      inputSchema = @Tool.InputSchema(generator = ContractSchema.class))
  ToolResponse planCut(RawMessage message) {
    return ToolReply.to(message, plans::plan, plan -> CutPlanPages.list(plan).render());
  }
}
