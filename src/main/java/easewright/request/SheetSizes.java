package easewright.request;

import easewright.pattern.PatternSheet;
import easewright.pattern.PatternSize;
import easewright.pattern.SizeNames;
import easewright.size.Region;
import easewright.size.SizeLabel;
import java.util.List;
import java.util.stream.Collectors;

/** Reads a size of a pattern, by its name on the sheet or whatever else the sheet calls it. */
final class SheetSizes {
  private SheetSizes() {}

  /**
   * The name on the sheet, or without a sheet the text as written; null if there is none.
   *
   * @param sheet the pattern; null when not said
   * @param region the region that calls the size so; null if not stated
   */
  static String read(RequestField spot, PatternSheet sheet, Region region) {
    String written = spot.text();
    if (written == null) {
      return null;
    }
    if (sheet == null) {
      if (!SizeLabel.isLike(written)) {
        spot.cannotBe("fault-no-size");
      }
      return written;
    }
    List<PatternSize> found = SizeNames.find(sheet, written, region);
    if (found.isEmpty()) {
      return spot.oneOf(SizeNames.all(sheet));
    }
    if (found.size() > 1) {
      spot.cannotBe(
          "fault-size-of-two",
          "sizes",
          found.stream().map(PatternSize::name).collect(Collectors.joining(", ")));
    }
    return found.get(0).name();
  }
}
