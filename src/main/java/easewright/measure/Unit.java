package easewright.measure;

import static easewright.measure.Dimension.AREAL_WEIGHT;
import static easewright.measure.Dimension.FORCE;
import static easewright.measure.Dimension.LENGTH;
import static easewright.measure.Dimension.LINE_TENSION;
import static easewright.measure.Dimension.PRESSURE;
import static easewright.measure.Dimension.RATIO;
import static easewright.measure.UnitSystem.IMPERIAL;
import static easewright.measure.UnitSystem.METRIC;

import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * The units used by sewers and cloth tests. Yard and pound are those of the international agreement
 * of 1959 (yard 0.9144 m, so inch 25.4 mm; pound 0.45359237 kg), gram-force and pound-force use
 * standard gravity 9.80665 m/s², all exact. The bare "g", "kg", "oz" and "lb" are forces: what a
 * kitchen or luggage scale shows when it pulls cloth.
 */
public enum Unit {
  MM(LENGTH, METRIC, 1, "mm", "millimetre", "millimetres", "millimeter", "millimeters"),
  CM(LENGTH, METRIC, 10, "cm", "centimetre", "centimetres", "centimeter", "centimeters"),
  M(LENGTH, METRIC, 1000, "m", "metre", "metres", "meter", "meters"),
  INCH(LENGTH, IMPERIAL, 25.4, "in", "inch", "inches", "\"", "″", "”", "''", "′′", "’’"),
  FOOT(LENGTH, IMPERIAL, 304.8, "ft", "foot", "feet", "'", "′", "’"),
  YARD(LENGTH, IMPERIAL, 914.4, "yd", "yds", "yard", "yards"),
  PERCENT(RATIO, METRIC, 0.01, "%", "percent", "per cent", "pct"),
  NEWTON(FORCE, METRIC, 1, "N", "newton", "newtons"),
  GRAM_FORCE(FORCE, METRIC, 0.00980665, "gf", "g", "gram", "grams"),
  KILOGRAM_FORCE(FORCE, METRIC, 9.80665, "kgf", "kg", "kilogram", "kilograms"),
  OUNCE_FORCE(FORCE, IMPERIAL, 0.27801385095378125, "ozf", "oz", "ounce", "ounces"),
  POUND_FORCE(FORCE, IMPERIAL, 4.4482216152605, "lbf", "lb", "lbs", "pound", "pounds"),
  NEWTON_PER_CM(LINE_TENSION, METRIC, 1, "N/cm"),
  CENTINEWTON_PER_CM(LINE_TENSION, METRIC, 0.01, "cN/cm"),
  NEWTON_PER_M(LINE_TENSION, METRIC, 0.01, "N/m"),
  GRAM_FORCE_PER_CM(LINE_TENSION, METRIC, 0.00980665, "gf/cm", "g/cm"),
  POUND_FORCE_PER_INCH(LINE_TENSION, IMPERIAL, 4.4482216152605 / 2.54, "lbf/in", "lb/in"),
  GRAM_PER_M2(AREAL_WEIGHT, METRIC, 1, "g/m²", "gsm", "g/sqm", "g/sq m"),
  OUNCE_PER_YD2(
      AREAL_WEIGHT,
      IMPERIAL,
      28.349523125 / (0.9144 * 0.9144),
      "oz/yd²",
      "osy",
      "oz/sqyd",
      "oz/sq yd"),
  KILOPASCAL(PRESSURE, METRIC, 1, "kPa"),
  PASCAL(PRESSURE, METRIC, 0.001, "Pa"),
  /** Conventional millimetre of mercury, 13.5951 × 9.80665 Pa; used beside both unit families. */
  MMHG(PRESSURE, METRIC, 0.133322387415, "mmHg", "mm hg");

  private static final Map<String, Unit> BY_NAME = new HashMap<>();

  static {
    for (Unit unit : values()) {
      for (String name : unit.names) {
        if (BY_NAME.put(plain(name), unit) != null) {
          throw new IllegalStateException("two units are called " + name);
        }
      }
    }
  }

  private final Dimension dimension;
  private final UnitSystem system;
  private final double factor;
  private final List<String> names;

  Unit(Dimension dimension, UnitSystem system, double factor, String... names) {
    this.dimension = dimension;
    this.system = system;
    this.factor = factor;
    this.names = List.of(names);
  }

  /** The unit with this name, case-insensitive; "²", "^2" and "2" are equivalent. */
  public static Optional<Unit> named(String name) {
    Unit asKept = BY_NAME.get(name);
    return Optional.ofNullable(asKept == null ? BY_NAME.get(plain(name)) : asKept);
  }

  /** What the unit measures. */
  public Dimension dimension() {
    return dimension;
  }

  /** The family the unit belongs to; percent and mmHg count as metric. */
  public UnitSystem system() {
    return system;
  }

  /** The size of this unit in base units of its {@link Dimension}. */
  public double factor() {
    return factor;
  }

  /** The unit's symbol in answers: "cm", "in", "g/m²". */
  public String symbol() {
    return names.get(0);
  }

  private static String plain(String name) {
    return name.strip()
        .toLowerCase(Locale.ROOT)
        .replace('\u00a0', ' ')
        .replace("²", "2")
        .replace("^2", "2")
        .replace(" /", "/")
        .replace("/ ", "/");
  }
}
