package easewright.diagnosis;

import static org.junit.jupiter.api.Assertions.assertEquals;

import easewright.fitting.ReportedSign;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Two reports speak of the same spot unless they say where and differ in it. */
class ReportedSignTest {
  private static ReportedSign sign(String id, String place, String side, String... when) {
    return new ReportedSign(id, true, place, side, null, null, List.of(when));
  }

  @ParameterizedTest
  @CsvSource({
    "a,front,left,  a,front,left,   true",
    "a,front,left,  b,front,left,   false",
    "a,front,,      a,back,,        false",
    "a,front,,      a,,,            true",
    "a,,,           a,back,,        true",
    "a,front,left,  a,front,right,  false",
    "a,front,left,  a,front,both,   true",
    "a,front,both,  a,front,right,  true",
    "a,front,,      a,front,right,  true",
  })
  void reports_overlap_as_far_as_either_says_where(
      String a,
      String place,
      String side,
      String b,
      String otherPlace,
      String otherSide,
      boolean so) {
    assertEquals(so, sign(a, place, side).overlaps(sign(b, otherPlace, otherSide)));
  }

  @ParameterizedTest
  @CsvSource({
    "after-an-hour,  by-evening,     false",
    "after-an-hour,  after-an-hour,  true",
    "after-an-hour,  always,         true",
  })
  void reports_of_different_times_do_not_overlap(String one, String other, boolean so) {
    assertEquals(so, sign("a", null, null, one).overlaps(sign("a", null, null, other)));
  }

  @ParameterizedTest
  @CsvSource({"after-an-hour", "always"})
  void a_report_of_no_time_overlaps_one_of_any(String time) {
    assertEquals(true, sign("a", null, null).overlaps(sign("a", null, null, time)));
  }
}
