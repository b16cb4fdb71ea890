package easewright.fitting;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** An edge that elastic may finish. */
public enum GarmentEdge {
  /** In front, or all round the neck. */
  NECKLINE,
  BACK_NECKLINE,
  /** One armhole, all round. */
  ARMHOLE,
  UNDERBAND;

  private final String wireName = name().toLowerCase(Locale.ROOT).replace('_', '-');

  /** The name on the wire: "back-neckline". */
  public String wireName() {
    return wireName;
  }

  /** The edge of this wire name, if there is one. */
  public static Optional<GarmentEdge> named(String wireName) {
    return Arrays.stream(values()).filter(one -> one.wireName().equals(wireName)).findFirst();
  }

  /** All wire names. */
  public static List<String> wireNames() {
    return Arrays.stream(values()).map(GarmentEdge::wireName).toList();
  }
}
