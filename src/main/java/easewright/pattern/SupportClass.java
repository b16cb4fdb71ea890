package easewright.pattern;

/** The support a garment is designed for. The design intention, not a certificate. */
public enum SupportClass {
  /** Rest, stretching, sleep. */
  LOW,
  /** Walking, cycling, weights. */
  MEDIUM,
  /** Running and jumping. */
  HIGH
}
