package easewright.intake;

import java.util.List;

/**
 * Finds dangers to health in a text. What several readers find is united: any of them can raise a
 * danger, and none can take away what another has raised. What the trained model makes of them, see
 * {@link Joined}.
 */
interface DangerReader {
  /** A name to tell readers apart by. */
  String name();

  /** The dangers a text tells of, and does not plainly deny. */
  List<Danger> in(Post post);
}
