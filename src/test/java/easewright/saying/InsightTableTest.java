package easewright.saying;

import static org.junit.jupiter.api.Assertions.assertEquals;

import easewright.clinic.Share;
import easewright.saying.InsightNotes.AskedNote;
import easewright.saying.InsightNotes.CountNote;
import easewright.saying.InsightNotes.GroupNote;
import easewright.saying.InsightNotes.InsightNote;
import easewright.saying.InsightNotes.ShareNote;
import java.util.List;
import org.junit.jupiter.api.Test;

class InsightTableTest {

  /** Quoting after RFC 4180, section 2; formula prefixes after OWASP, "CSV Injection". */
  @Test
  void a_size_that_looks_like_a_formula_is_written_as_text() {
    CountNote count =
        new CountNote("band-too-long", "band too long", ShareNote.of(new Share(2, 4)));
    GroupNote group =
        new GroupNote("size", "=1+1", "=HYPERLINK(\"x\",1)", 4, List.of(count), List.of());
    InsightNote insight =
        new InsightNote(
            new AskedNote(null, null, null, null),
            List.of(),
            4,
            2,
            0,
            true,
            List.of(count),
            List.of(),
            List.of(group),
            List.of());
    assertEquals(
        List.of(
            "by,group,kind,id,name,cases,of,share,from,to,chance",
            "all,,cause,band-too-long,band too long,2,4,,,,",
            "size,\"'=HYPERLINK(\"\"x\"\",1)\",cause,band-too-long,band too long,2,4,,,,"),
        InsightTable.of(insight).lines().toList());
  }
}
