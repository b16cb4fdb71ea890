package easewright.saying;

import easewright.saying.InsightNotes.InsightNote;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;

/** Drawing of an insight; its text is in {@code templates/insight}. */
@CheckedTemplate(basePath = "insight")
public final class InsightPages {
  private InsightPages() {}

  /** A stand-alone drawing: {@code drawing.html}. */
  public static native TemplateInstance drawing(InsightNote insight, BarPlot plot);
}
