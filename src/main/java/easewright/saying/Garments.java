package easewright.saying;

import easewright.handbook.GarmentDrawing;
import java.util.Optional;

/** Drawings of the garments that answers are about. */
public interface Garments {

  /** The garment of a family, by its id; empty if it is not drawn. */
  Optional<GarmentDrawing> garment(String family);
}
