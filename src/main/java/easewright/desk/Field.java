package easewright.desk;

/**
 * A form field, named after the location of its value in the request.
 *
 * @param pointer RFC 6901 pointer into the request, the field's name
 * @param metric unit of a bare number if metric units are ticked; null for a text
 * @param imperial the same for inches
 */
record Field(String pointer, String metric, String imperial) {
  static Field text(String pointer) {
    return new Field(pointer, null, null);
  }

  static Field length(String pointer) {
    return new Field(pointer, "cm", "in");
  }

  /** A length in millimetres. */
  static Field width(String pointer) {
    return new Field(pointer, "mm", "in");
  }

  /** The value with its unit: sewers write "94" where the form shows the unit. */
  String written(String value, boolean inches) {
    boolean bare = metric != null && value.matches("[0-9][0-9 ./,]*");
    return bare ? value + " " + (inches ? imperial : metric) : value;
  }
}
