package easewright.request;

import easewright.fitting.GivenAmount;
import easewright.fitting.ReportedSign;
import easewright.rulebook.check.KnownWords;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;

/** Reads what was seen or felt, or looked for and not seen. */
final class SignsReader {
  static final int MOST_SIGNS = 60;

  private final KnownNames known;

  SignsReader(KnownNames known) {
    this.known = known;
  }

  /** Reads the list; what cannot be read is a fault, and left out. */
  List<ReportedSign> read(RequestField list) {
    List<ReportedSign> signs = new ArrayList<>();
    for (RequestField item : list.items(MOST_SIGNS)) {
      RequestField spot =
          item.fields("sign", "seen", "place", "side", "degree", "amount", "when", "sure");
      if (!spot.isWritten()) {
        continue;
      }
      String id = needed(spot.at("sign"), known.signs());
      boolean present = !"absent".equals(spot.at("seen").oneOf(List.of("present", "absent")));
      String place = spot.at("place").oneOf(known.places());
      String side = spot.at("side").oneOf(List.of("left", "right", "both"));
      String degree = spot.at("degree").oneOf(List.of("slight", "clear", "strong"));
      GivenAmount amount = AmountReader.read(spot.at("amount"));
      List<String> when = when(spot.at("when"));
      double sure = sure(spot.at("sure"));
      if (!present && (degree != null || amount != null)) {
        spot.cannotBe("fault-absent-sign");
      }
      if (id != null) {
        ReportedSign sign = new ReportedSign(id, present, place, side, degree, amount, when, sure);
        if (signs.stream().anyMatch(sign::overlaps)) {
          spot.cannotBe("fault-sign-twice");
        }
        signs.add(sign);
      }
    }
    return signs;
  }

  /** A probability; 1 if none is given. */
  private static double sure(RequestField spot) {
    double least = spot.faults().words().bound("least-sure");
    double value = spot.isWritten() && spot.node().isNumber() ? spot.node().doubleValue() : 1;
    if (spot.isWritten() && !spot.node().isNumber() || value < least || value > 1) {
      spot.cannotBeRead("fault-sure", "least", least);
      return 1;
    }
    return value;
  }

  /** One time or several. */
  private static List<String> when(RequestField spot) {
    if (spot.node().isTextual()) {
      String time = spot.oneOf(KnownWords.TIMES);
      return time == null ? List.of() : List.of(time);
    }
    return FittingReader.once(spot, KnownWords.TIMES.size(), KnownWords.TIMES, "time");
  }

  private static String needed(RequestField spot, Collection<String> names) {
    if (!spot.isWritten()) {
      spot.needs("fault-id-missing");
    }
    return spot.oneOf(names);
  }
}
