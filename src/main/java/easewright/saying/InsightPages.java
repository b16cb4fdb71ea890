package easewright.saying;

import easewright.saying.InsightNotes.InsightNote;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;

/** Insight as it is drawn; everything said stands in {@code templates/insight}. */
@CheckedTemplate(basePath = "insight")
public final class InsightPages {
  private InsightPages() {}

  /** A drawing to stand alone: {@code drawing.html}. */
  public static native TemplateInstance drawing(InsightNote insight, BarPlot plot);
}
