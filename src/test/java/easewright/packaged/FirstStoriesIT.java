package easewright.packaged;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIf;

/**
 * One story of the desk and one of a clinic in Chromium, quick enough for every run; all stories
 * are in {@link DeskIT} and {@link ClinicDeskIT}.
 */
@EnabledIf("easewright.packaged.BrowserTests#canRun")
class FirstStoriesIT {
  @Test
  void a_question_is_answered_at_the_desk_and_kept_and_answered_in_a_clinic() throws Exception {
    BrowserTests.install();
    try (PackagedService service = PackagedService.start()) {
      BrowserTests.passThese(
          service, "desk.test.mjs", List.of("a pasted question is answered as one types"));
      BrowserTests.passThese(
          service,
          "clinic.test.mjs",
          List.of(
              "is opened, and its organiser gives two helpers their keys",
              "keeps a pasted question as a case",
              "lets one of two helpers take a case at once",
              "answers it with an edited reply"));
    }
  }
}
