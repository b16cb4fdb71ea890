package easewright.packaged;

import easewright.clinic.RealPostgres;
import easewright.clinic.StoreAddress;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIf;
import org.junit.jupiter.api.io.TempDir;

/**
 * A clinic's pages in Chromium, on both stores: one case from a pasted question to its closing, two
 * helpers at the same case, the wearer by her link, and every page held against WCAG 2.2 AA (W3C
 * Recommendation of 5 October 2023) by axe-core. What is checked stands in {@code
 * src/test/browser/clinic.test.mjs}.
 */
@Tag("long")
@EnabledIf("easewright.packaged.BrowserTests#canRun")
class ClinicDeskIT {
  @BeforeAll
  static void install() throws Exception {
    BrowserTests.install();
  }

  @Test
  void a_case_goes_from_a_pasted_question_to_its_closing_in_a_folder(@TempDir Path folder)
      throws Exception {
    tell("-Deasewright.clinic.store=" + folder.resolve("store"));
  }

  @Test
  void a_case_goes_from_a_pasted_question_to_its_closing_on_a_server() throws Exception {
    StoreAddress server = RealPostgres.emptyDatabase();
    tell(
        "-Deasewright.clinic.url=" + server.url(),
        "-Deasewright.clinic.user=" + server.user(),
        "-Deasewright.clinic.password=" + server.password());
  }

  private static void tell(String... store) throws Exception {
    try (PackagedService service = PackagedService.start(store)) {
      BrowserTests.pass(service, "clinic.test.mjs", 1);
    }
  }
}
