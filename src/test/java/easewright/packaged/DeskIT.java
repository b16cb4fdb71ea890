package easewright.packaged;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIf;

/**
 * The desk in Chromium: with scripts, without, by keyboard, and held against WCAG 2.2 AA (W3C
 * Recommendation of 5 October 2023) by axe-core in light and dark, at 360 and 1280 px. What is
 * checked stands in {@code src/test/browser/desk.test.mjs}.
 */
@Tag("long")
@EnabledIf("easewright.packaged.BrowserTests#canRun")
class DeskIT {
  @Test
  void every_story_of_the_desk_goes_well_in_a_browser_and_every_page_is_accessible()
      throws Exception {
    BrowserTests.install();
    try (PackagedService service = PackagedService.start()) {
      BrowserTests.pass(service, "desk.test.mjs", 3);
    }
  }
}
