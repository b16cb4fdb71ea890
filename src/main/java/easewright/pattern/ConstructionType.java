package easewright.pattern;

/** How a garment supports, by the construction of its front. */
public enum ConstructionType {
  /** A flat front held by the pull of its cloth. */
  COMPRESSION,
  /** A front shaped by a seam that runs over the bust. */
  SHAPED_FRONT
}
