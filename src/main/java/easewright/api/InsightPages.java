package easewright.api;

import easewright.api.InsightNotes.InsightNote;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;

/** Insight as it is drawn; everything said stands in {@code templates/insight}. */
@CheckedTemplate(basePath = "insight")
final class InsightPages {
  private InsightPages() {}

  /** A drawing to stand alone: {@code drawing.html}. */
  static native TemplateInstance drawing(InsightNote insight, BarPlot plot);
}
