package easewright.saying;

import easewright.plan.CutPlan;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;

/** The cut plan for readers; its text is in {@code templates/plan}. */
@CheckedTemplate(basePath = "plan")
public final class CutPlanPages {
  private CutPlanPages() {}

  /** Markdown to post: {@code list.md}. */
  public static native TemplateInstance list(CutPlan plan);

  /** A page to print, with drawings: {@code sheet.html}. */
  public static native TemplateInstance sheet(CutPlan plan);
}
